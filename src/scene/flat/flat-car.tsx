/** The car drawn flat where the browser cannot draw in 3D: from above, one option or two. */
import { type RefObject, useEffect, useMemo, useState } from 'react';
import { windowOf } from '../../geometry';
import { optionTitle } from '../../plan/edits';
import { currentOption, currentSeat, useAnswer, useSession, useShownPlan } from '../../store';
import { HalfHeadings } from '../halves/headings';
import { splitSheet } from '../halves/split';
import { FlatHalf } from './flat-half';
import { type FlatOf, flatCar, flatPlan } from './flat-plan';
import './flat.css';

interface FlatCarProps {
  host: RefObject<HTMLDivElement | null>;
  /** Why it is flat. */
  sentence: string;
}

export function FlatCar({ host, sentence }: FlatCarProps) {
  const shown = useShownOptions();
  const { width, height } = useSize(host);
  const two = shown !== null && shown.options.length > 1;
  const split = useMemo(
    () => splitSheet(width, Math.max(1, height - FOOT), two),
    [width, height, two],
  );
  useEffect(() => {
    if (host.current) host.current.dataset.halves = split.way;
  }, [host, split]);
  const rects = [split.board, split.beside];
  return (
    <>
      {shown?.options.map((one, i) => {
        const rect = rects[i];
        if (!rect || width === 0) return null;
        const plan = flatPlan(shown.car, shown.window, shown.seat, one, rect);
        return <FlatHalf key={one.option.id} plan={plan} rect={rect} />;
      })}
      {two && <HalfHeadings leave={() => undefined} />}
      <p className="flat-sentence" role="status">
        {sentence}
      </p>
      {shown && (
        <p className="scene-hidden-words">
          From above: {shown.options.map(({ option }) => optionTitle(option)).join(' and ')}, with
          the ways the sound takes to the seat in view. Everything can be moved by the fields beside
          it.
        </p>
      )}
    </>
  );
}

/** The sentence's own strip at the foot, px. */
const FOOT = 42;

/** The option on the board and the one beside it, over one car. */
function useShownOptions() {
  const plan = useShownPlan();
  const answer = useAnswer();
  const besideId = useSession((session) => session.beside);
  // Named so that a new choice draws anew.
  const chosen = useSession((session) => session.option);
  const sitting = useSession((session) => session.seat);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the session is read inside by the store
  return useMemo(() => {
    if (!answer.ok) return null;
    const { cabin } = answer;
    const board = currentOption(answer);
    const ids = [board?.id, besideId];
    const options = ids.flatMap((id) => {
      const option = plan.options.find((one) => one.id === id);
      const result = answer.options.find((one) => one.id === id);
      return option && result ? [{ option, result } satisfies FlatOf] : [];
    });
    const seatId = currentSeat(board)?.id;
    const seat = cabin.seats.find(({ id }) => id === seatId) ?? null;
    const car = flatCar(cabin, seat);
    const waves = options.flatMap(({ result }) =>
      result.placed.map(({ position }) => ({ centre: position })),
    );
    if (car.outline.length === 0 && waves.length === 0 && !seat) return null;
    return { options, seat, car, window: windowOf(car, seat, [{ waves }]) };
  }, [plan, answer, besideId, chosen, sitting]);
}

function useSize(host: RefObject<HTMLElement | null>): { width: number; height: number } {
  const [size, setSize] = useState({ width: 0, height: 0 });
  useEffect(() => {
    const element = host.current;
    if (!element) return;
    const observer = new ResizeObserver(() =>
      setSize({ width: element.clientWidth, height: element.clientHeight }),
    );
    observer.observe(element);
    return () => observer.disconnect();
  }, [host]);
  return size;
}
