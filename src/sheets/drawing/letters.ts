/** A to Z, then AA, AB …: what the speakers are called on drawings, in their option's order. */
export function letterOf(place: number): string {
  const last = String.fromCharCode(65 + (place % 26));
  return place < 26 ? last : letterOf(Math.floor(place / 26) - 1) + last;
}
