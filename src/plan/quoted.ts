/** Longest text quoted in a sentence, characters. */
const QUOTED = 40;

/** A text as it may stand in a sentence: quoted, and cut where it is long. */
export const quoted = (text: string): string => {
  const characters = [...text];
  return `"${characters.length > QUOTED ? `${characters.slice(0, QUOTED).join('')}…` : text}"`;
};
