import { WorkedOut } from '../../parts/worked-out';

/** How the times are worked out, and what is left out. */
export function SlowHow() {
  return (
    <WorkedOut>
      <p>
        The clock counts from the first channel’s signal; a millisecond of sound takes a second to
        watch. A wave is a sphere that grows by the speed of sound at the plan’s temperature; from
        above it is drawn where it cuts the height of the ears, √(r² − h²), once it has come up or
        down to it. With delays each speaker starts as late as the alignment says, in whole samples,
        as a processor holds it.
      </p>
      <p>
        The times of arrival are those of the arrivals sheet, to each ear by the shortest free way.
        Spheres are drawn as if nothing stood in their way: behind an obstacle they show where the
        sound would be without it, and what arrives, the dot, comes round it later. Direct sound
        only: no reflections, no sound through panels, and no time that crossovers or a heavy cone
        take to start.
      </p>
    </WorkedOut>
  );
}
