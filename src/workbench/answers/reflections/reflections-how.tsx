import { WorkedOut } from '../../parts/worked-out';

/** How reflections are found and weighed, and what they leave out. */
export function ReflectionsHow() {
  return (
    <WorkedOut>
      <p>
        A panel throws sound where it mirrors the speaker to the ear: image sources (Allen and
        Berkley, 1979), on curved panels Fermat’s principle, the place where the way by the panel is
        shortest. Both legs must be free. Second order is by two panes of glass and only worked out
        when asked for.
      </p>
      <p>
        Times count from the first direct sound of the same speaker at the same ear, round what is
        in its way. Levels are against that direct sound with a free line, so the direct sound
        itself stands below 0 dB where something is in its way: spreading, the panels’ share of the
        pressure thrown back, and the speaker’s directivity towards the panel against that towards
        the ear, at the middle of its band. The sentences are told at the middle of the head;
        “strong” is −10 dB or more, a choice of ours.
      </p>
      <p>
        The first notch is c / (2 · extra way): there the two cancel if the panel does not turn the
        phase (Everest and Pohlmann). Left out: scattering, absorption by frequency, the gathering
        of sound by curved panels, what bends round edges, and everything later than this.
      </p>
    </WorkedOut>
  );
}
