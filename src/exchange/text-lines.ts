/** What measured text files have in common, line by line. */

/** What marks a line as a comment, at its start. */
export const COMMENT = /^(?:[#*;%!]|\/\/|--)/;
export const STARTS_AS_NUMBER = /^[+-]?[.,]?\d/;

/** Lines without their ends; a mark of the byte order is no part of the first. */
export const linesOf = (text: string): string[] => text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);

/** A line without the comment at its end, quotes and blanks around it; minus signs alike. */
export const bareLine = (line: string): string =>
  line
    .replace(/\s(?:#|\/\/).*$/, '')
    .replaceAll('"', '')
    // The typographer's minus sign.
    .replaceAll('\u2212', '-')
    .trim();

/** In quotes, cut short. */
export const shown = (text: string): string =>
  `"${text.length > 40 ? `${text.slice(0, 40)}…` : text}"`;
