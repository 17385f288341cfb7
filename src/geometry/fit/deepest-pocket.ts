/** Deeper than any car has room for, mm. By itself, for whoever only checks what was typed. */
export const DEEPEST_POCKET = 2000;
