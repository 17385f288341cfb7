/** The car, drawn. Fills its parent; everything round it stands without it. */
import { lazy, Suspense, useEffect, useId, useRef, useState } from 'react';
import { sessionStore, useSession } from '../store';
import { startBoard } from './board';
import { HalfHeadings } from './halves/headings';
import './scene.css';

const NO_DRAWING =
  'This browser cannot draw in 3D (WebGL is missing or switched off), so the car is drawn flat, from above. Lists, numbers, tables and export work as ever.';
const STOPPED =
  'The drawing of the car in 3D has stopped. Lists, numbers, tables and export go on; reload the page to draw again.';

// For the few who need it.
const FlatCar = lazy(async () => ({ default: (await import('./flat/flat-car')).FlatCar }));

export default function Scene() {
  const host = useRef<HTMLDivElement>(null);
  const words = useId();
  const two = useSession((session) => session.beside !== null);
  const [sentence, setSentence] = useState<string | null>(null);

  useEffect(() => {
    const parent = host.current;
    if (!parent) return;
    let stop: (() => void) | null = null;
    const goFlat = (why: string) => {
      sessionStore.setState({ flat: true });
      setSentence(why);
    };
    try {
      stop = startBoard(parent, words, (reason) => {
        console.error(reason);
        stop?.();
        stop = null;
        goFlat(STOPPED);
      });
    } catch (reason) {
      console.warn(reason);
      goFlat(NO_DRAWING);
    }
    return () => stop?.();
  }, [words]);

  return (
    <div className="scene" ref={host}>
      {sentence ? (
        <Suspense fallback={<p className="scene-hidden-words">{sentence}</p>}>
          <FlatCar host={host} sentence={sentence} />
        </Suspense>
      ) : (
        <>
          <p className="scene-hidden-words" id={words}>
            The cabin with its speakers and the ways their sound takes to the seat in view: straight
            where the line is free, dash-dot where it passes something closely, bent round what is
            in the way. Reflections and the image can be drawn as well. Keys 1 to 5 change the view:
            free, plan, side, front, from the seat. With a speaker selected the arrow keys move it
            along its panel by 5 millimetres, with Shift by 25, with Alt by 1. With a seat selected
            they slide it. With nothing selected they turn the view. Escape takes a move back. All
            of it can also be typed into the fields beside the drawing.
            {two &&
              ' The drawing is in two halves seen from the same place: the option on the board, where things are moved, and another beside it to look at.'}
          </p>
          {two && <HalfHeadings leave={() => drawingOf(host.current)?.focus()} />}
        </>
      )}
    </div>
  );
}

const drawingOf = (host: HTMLElement | null) => host?.querySelector<HTMLElement>('.scene-canvas');
