import { WorkedOut } from '../../parts/worked-out';

/** Where the map's numbers come from, and what they leave out. */
export function MapHow() {
  return (
    <WorkedOut>
      <p>
        The speaker is tried at every spot of a grid over each panel it could be mounted on, with
        its own body, band, stand-off and aim, and its twin at the mirrored spot. Each number is the
        one the tables would show with the pair there; of several seats the worst counts. Between
        spots colours and lines are drawn as if values ran evenly, so where something begins to
        stand in the way the change is sharper than painted.
      </p>
      <p>
        Obstruction is an edge formula for hard screens (Kurze and Anderson, J. Acoust. Soc. Am. 49,
        1971), at the middle of the band. Reflections are first order (image sources: Allen and
        Berkley, J. Acoust. Soc. Am. 65, 1979). Penalties of the blend: difference by 100 mm, angle
        by 45°, obstruction by 6 dB, reflections by 1 ms: choices of ours.
      </p>
      <p>
        Whether it fits is asked of a model, with cylinders for bodies and usual depths behind the
        panels: measure the car. Hatching and reading ask of its twin too: near the centreline the
        two would meet. Colours: cividis, after Nuñez, Anderton and Renslow (PLoS ONE 13, 2018), ten
        of its colours with straight lines in CIELAB between them.
      </p>
    </WorkedOut>
  );
}
