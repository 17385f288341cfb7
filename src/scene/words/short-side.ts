/** "left tweeter" → "L tweeter": on the drawing the side is one letter. */
export const shortSide = (name: string): string =>
  name.replace(/^left /, 'L ').replace(/^right /, 'R ');
