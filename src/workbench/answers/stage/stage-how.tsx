import { WorkedOut } from '../../parts/worked-out';

export function StageHow() {
  return (
    <WorkedOut>
      <p>
        Path spread is the longest less the shortest path from the speakers of one side to the
        middle of the head. A hand-over is told on its worse side: how far its sum is from the ideal
        one at the crossover itself, and the deepest dip within half an octave of it, both with
        delays and gains as set. The image is where a centre-panned sound seems to stand, octave by
        octave, and its spread from 250 Hz to 4 kHz; sources and limits stand with Crossovers and
        Image.
      </p>
      <p>
        Where an image should stand is a matter of taste, so no octave is best; how little it
        spreads is. What differs by less than tape, seat and temperature leave uncertain is as good:
        Compare says how that is worked out.
      </p>
    </WorkedOut>
  );
}
