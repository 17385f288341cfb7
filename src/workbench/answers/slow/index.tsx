import { type KeyboardEvent, useCallback, useEffect, useMemo } from 'react';
import type { SpeakerInput } from '../../../geometry';
import { useSession } from '../../../store';
import { slowMotionStore, useSlowMotion } from '../../../store/slow-motion';
import type { Board } from '../../parts/use-board';
import { useMedia } from '../../parts/use-media';
import { useSettled } from '../../parts/use-settled';
import { useStage } from '../../parts/use-stage';
import { useWidth } from '../../parts/use-width';
import { Announce } from './announce';
import { Choices } from './choices';
import { FromAbove } from './from-above';
import { ReachesTable } from './reaches-table';
import { Ruler } from './ruler';
import { SaveStrip } from './save-strip';
import { type Shown, type ShownMotion, useShownMotions } from './shown-motion';
import { SlowHow } from './slow-how';
import { outcomeWords, roundWords, stillWords } from './slow-words';
import { Clock, playOrPause, Transport, toNextArrival } from './transport';
import { useStageOf } from './use-stage-of';
import './slow.css';

const CALM = '(prefers-reduced-motion: reduce)';

/** Sound leaving all speakers and reaching both ears, a thousand times slower than it does. */
export default function SlowSheet({ board }: { board: Board }) {
  const besideId = useSession((session) => session.beside);
  const onBoard = useStage(board);
  const beside = useStageOf(besideId);
  const stages = useMemo(() => [onBoard, beside], [onBoard, beside]);
  // A drag moves what is looked at; the waves follow when it ends.
  const { settled, waiting } = useSettled(stages);
  const delays = useSlowMotion((state) => state.delays);
  const seat = board.seat?.id ?? '';
  const shown = useShownMotions(settled, seat, delays);
  useOpen(shown?.end ?? 0);
  if (!shown) return <p className="quiet-text">There is no seat to listen from.</p>;
  if (shown.options.every(({ motion }) => motion.waves.length === 0))
    return <p className="quiet-text">No speaker stands in this option yet. Add a pair first.</p>;
  return <SlowMotionOf shown={shown} waiting={waiting} />;
}

/** The waves are drawn in the car as long as the sheet is open; it never plays unseen. */
function useOpen(end: number): void {
  useEffect(() => slowMotionStore.endAt(end), [end]);
  useEffect(() => {
    slowMotionStore.open();
    const hide = () => document.hidden && slowMotionStore.pause();
    document.addEventListener('visibilitychange', hide);
    return () => {
      document.removeEventListener('visibilitychange', hide);
      slowMotionStore.close();
    };
  }, []);
}

function SlowMotionOf({ shown, waiting }: { shown: Shown; waiting: boolean }) {
  const calm = useMedia(CALM);
  useEffect(() => {
    if (calm) slowMotionStore.pause();
  }, [calm]);
  const { options } = shown;
  const [first] = options;
  const motions = useMemo(() => options.map(({ motion }) => motion), [options]);
  const words = useCallback(
    (time: number) =>
      options
        .map(({ title, motion, stage }) => {
          const said = stillWords(motion, time, stage.option.speakers);
          return options.length > 1 ? `${title}: ${said}` : said;
        })
        .join(' '),
    [options],
  );
  // What the slider says stands still while it plays.
  const still = useSlowMotion(({ playing, time }) => (playing ? null : time));
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== ' ' || ownsSpace(event.target)) return;
    event.preventDefault();
    if (calm) toNextArrival(motions);
    else playOrPause();
  };
  if (!first) return null;
  const talk = (
    <div className="slow-talk">
      {options.length === 1 && <Outcome one={first} />}
      <Choices cabin={first.stage.cabin} seat={first.seat.id} />
      <div className="slow-controls">
        <Transport motions={motions} calm={calm} />
        <Clock />
        <Ruler shown={shown} valueText={words(still ?? 0)} />
      </div>
      <p className="footnote">
        {calm
          ? 'Your system asks for less motion, so this stands still: step, or move the slider. Space goes to the next arrival.'
          : 'Space plays and stops; arrow keys on the slider step.'}
        {waiting && ' What you move follows when you let go.'}
      </p>
    </div>
  );
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a shortcut for what its buttons do as well
    <div
      className="slow-sheet"
      data-waiting={waiting}
      data-options={options.length}
      onKeyDown={onKeyDown}
    >
      <Announce words={words} />
      {options.length === 1 ? (
        <>
          <div className="slow-board">
            <Drawing one={first} shown={shown} />
            {talk}
          </div>
          <Arrivals one={first} />
        </>
      ) : (
        <>
          {talk}
          <div className="slow-options">
            {options.map((one) => (
              <section
                key={one.stage.option.id}
                className="slow-option"
                aria-label={`${one.title}, in slow motion`}
              >
                <h3 dir="auto">{one.title}</h3>
                <Drawing one={one} shown={shown} />
                <Outcome one={one} />
                <Arrivals one={one} />
              </section>
            ))}
          </div>
        </>
      )}
      <SlowHow />
      <SaveStrip shown={shown} />
    </div>
  );
}

/** Where Space already means something: it presses buttons, opens lists and writes. */
const ownsSpace = (target: EventTarget): boolean =>
  target instanceof HTMLElement &&
  target.matches('button, select, summary, a, input:not([type="range"]), textarea');

const Outcome = ({ one }: { one: ShownMotion }) => (
  <p className="slow-sentence">{outcomeWords(one.both)}</p>
);

/** Larger it would only take room, px. */
const MOST_WIDE = 420;

function Drawing({ one, shown }: { one: ShownMotion; shown: Shown }) {
  const [box, width] = useWidth<HTMLDivElement>(240);
  return (
    <div className="slow-drawing" ref={box}>
      <FromAbove shown={one} window={shown.window} width={Math.min(width, MOST_WIDE)} />
    </div>
  );
}

function Arrivals({ one }: { one: ShownMotion }) {
  const { title, motion, both, stage } = one;
  const speakers = useMemo(() => byArrival(one), [one]);
  const notes = roundWords(motion, stage.option.speakers);
  const { problem } = both.aligned;
  return (
    <div className="slow-list">
      <ReachesTable title={title} motion={motion} speakers={speakers} />
      {motion.delays === 'aligned' && problem && <p className="notice">No delays: {problem}.</p>}
      {notes.length > 0 && (
        <ul className="reason-notes">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** In the order in which their sound arrives without delays: rows stay when delays come and go. */
function byArrival({ both, stage }: ShownMotion): SpeakerInput[] {
  const heads = both.none.reaches.filter(({ at }) => at === 'head');
  return heads.flatMap(
    ({ speaker }) => stage.option.speakers.find(({ id }) => id === speaker) ?? [],
  );
}
