import { useMemo } from 'react';
import {
  channelSettings,
  createImageStudy,
  pairsOf,
  type Seat,
  type SeatImage,
  type Side,
  type Stage,
} from '../../../geometry';
import { seatName, speakerName } from '../../../plan/names';
import { sessionStore } from '../../../store';
import { plainReasons } from '../../parts/plain-reason';
import type { Board } from '../../parts/use-board';
import { useSettled } from '../../parts/use-settled';
import { useStage } from '../../parts/use-stage';
import { useWidth } from '../../parts/use-width';
import { WorkedOut } from '../../parts/worked-out';
import { Fan } from './fan';
import './image.css';
import { FanKey } from './fan-key';
import { ImageTable } from './image-table';
import { angleWords, imageSentence, standOf, standWords } from './image-words';
import { lateralDegOf } from './lateral';

const imageAt = createImageStudy();

/** Where a centre-panned sound seems to stand: at the seat in view at large, at the others small. */
export default function ImageSheet({ board }: { board: Board }) {
  // Some milliseconds a seat: a drag would stutter.
  const { settled: stage, waiting } = useSettled(useStage(board));
  const seats = stage?.cabin.seats;
  const images = useMemo(
    () => (stage ? stage.cabin.seats.map(({ id }) => imageAt(stage, id)) : []),
    [stage],
  );
  const id = board.seat?.id;
  const seat = seats?.find((one) => one.id === id);
  const image = images.find((one) => one.seat === id);
  if (!stage || !seat || !image)
    return <p className="quiet-text">There is no seat to listen from.</p>;
  if (stage.option.speakers.length === 0)
    return <p className="quiet-text">No speaker stands in this option yet. Add a pair first.</p>;
  return <ImageOf stage={stage} seat={seat} images={images} image={image} waiting={waiting} />;
}

interface ImageOfProps {
  stage: Stage;
  seat: Seat;
  image: SeatImage;
  images: readonly SeatImage[];
  waiting: boolean;
}

function ImageOf({ stage, seat, image, images, waiting }: ImageOfProps) {
  const [box, width] = useWidth<HTMLDivElement>(360);
  const { speakers } = stage.option;
  const name = seatName(seat.id);
  const standing = useMemo(() => standingOf(stage, seat), [stage, seat]);
  const reasons = plainReasons(image.reasons, speakers);
  const others = images.filter((one) => one.seat !== seat.id);
  return (
    <div className="image-sheet" data-waiting={waiting}>
      <p className="image-sentence">{imageSentence(image, name)}</p>
      <p className="footnote">
        {alignedWords(stage)}
        {waiting && ' These follow when you let go.'}
      </p>
      <div className="image-columns">
        <div className="image-fan">
          <div ref={box}>
            <Fan image={image} width={Math.min(width, 540)} speakers={standing} />
          </div>
          <FanKey />
          {standing.length > 0 && (
            <p className="footnote">
              The speakers themselves, seen from this head:{' '}
              {standing.map((one) => `${one.name} ${angleWords(one.deg, false)}`).join(', ')}.
            </p>
          )}
        </div>
        <ImageTable image={image} speakers={speakers} seat={name} />
      </div>
      {reasons.length > 0 && <p className="footnote">{reasons.join(' ')}</p>}
      {others.length > 0 && (
        <section aria-labelledby="image-elsewhere">
          <h3 id="image-elsewhere">With the same delays and gains, elsewhere</h3>
          <ul className="image-others">
            {others.map((other) => (
              <li key={other.seat}>
                <Elsewhere image={other} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <ImageLimits />
    </div>
  );
}

/** One of the other seats, small; choosing it brings it into view. */
function Elsewhere({ image }: { image: SeatImage }) {
  const name = seatName(image.seat);
  const stand = standOf(image.on);
  return (
    <button type="button" onClick={() => sessionStore.setState({ seat: image.seat })}>
      <Fan image={image} width={172} speakers={[]} small />
      <span>
        <strong>{name}</strong>{' '}
        {stand.kind === 'told' ? `It ${standWords(stand)} here.` : 'No image can be told here.'}
      </span>
    </button>
  );
}

function alignedWords(stage: Stage): string {
  const { by, seat } = channelSettings(stage);
  if (by === 'seats') return 'Delays and gains are the compromise over several seats.';
  return seat === null ? '' : `Delays and gains are those for the ${seatName(seat)}.`;
}

/** Where the speakers stand that play a centre-panned sound, from left to right. */
function standingOf(stage: Stage, seat: Seat): { name: string; side: Side; deg: number }[] {
  const { option, result } = stage;
  const paired = pairsOf(option.speakers).flatMap(({ left, right }) => [left, right]);
  return option.speakers
    .flatMap((speaker) => {
      const placed = result.placed.find((one) => one.speaker === speaker.id);
      const deg = placed ? lateralDegOf(placed.position, seat.ears) : null;
      if (!speaker.side || deg === null || !paired.includes(speaker.id)) return [];
      if (speaker.role === 'subwoofer' || speaker.role === 'rear-fill') return [];
      return [{ name: speakerName(speaker, option.speakers), side: speaker.side, deg }];
    })
    .sort((a, b) => a.deg - b.deg);
}

function ImageLimits() {
  return (
    <WorkedOut>
      <p>
        The sounds of all speakers that play an octave are added up at both ears of a rigid sphere
        as wide as the listener’s ears are apart (Duda and Martens, J. Acoust. Soc. Am. 104, 1998).
        What differs between the ears is then compared with what a single sound 1 m away would make
        differ: the time up to 1.5 kHz, the level above (duplex theory; Blauert, Spatial Hearing).
        The time is where the ears’ signals agree best within ±1 ms, after the correlation of ISO
        3382-1; where they agree too little there is no angle.
      </p>
      <p>
        Limits: direct sound only, no reflections, and one sound from every pair at once, crossovers
        not counted. A sphere has no outer ears and no shoulders. Angles are from the plane between
        the ears, so front, back and height are not told apart. Beyond about 1 ms between two
        speakers the ear goes by the first one, and this is no prediction. Above 1.5 kHz the level
        difference of a sphere falls again beyond some 50° to 70°, so what is farther out is told
        nearer; trust it to about 45°. A hint where to listen, not a measurement.
      </p>
    </WorkedOut>
  );
}
