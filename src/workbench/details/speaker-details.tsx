import { lazy, Suspense } from 'react';
import type { SpeakerInput } from '../../geometry';
import { isTied, tiePair } from '../../plan/edits';
import { pairName, speakerName } from '../../plan/names';
import { planStore } from '../../store';
import { openSheet } from '../answers/open-sheet';
import { CautionsNote } from '../cautions';
import { Boundary } from '../parts/boundary';
import { SideMark } from '../parts/marks';
import { type Board, useLocked } from '../parts/use-board';
import { DetailsHead } from './details-head';
import { SpeakerAim } from './speaker-aim';
import { SpeakerKit } from './speaker-kit';
import { SpeakerPlace } from './speaker-place';
import { WayNote } from './way-note';

// Not needed for the first numbers on screen.
const SpeakerSound = lazy(() => import('./sound'));
const FitNote = lazy(() => import('../fit/fit-note'));

/** What every part of a speaker's details is given. */
export interface SpeakerPartProps {
  board: Board;
  optionId: string;
  speaker: SpeakerInput;
  /** "left tweeter". */
  name: string;
}

/** Everything about the selected speaker. */
export function SpeakerDetails({ board, speaker }: { board: Board; speaker: SpeakerInput }) {
  const { option } = board;
  const locked = useLocked();
  if (!option) return null;
  const name = speakerName(speaker, option.speakers);
  const { pair } = speaker;
  const twin = option.speakers.find((s) => s.pair === pair && s.id !== speaker.id);
  const part = { board, optionId: option.id, speaker, name };
  return (
    <>
      <DetailsHead title={name} mark={<SideMark side={speaker.side} />}>
        {pair === undefined || !speaker.side
          ? 'Stands alone.'
          : !twin
            ? `Its pair, ${pairName(pair, option.speakers)}, has no other side.`
            : isTied(option, pair)
              ? `Tied: the ${otherName(speaker)} one moves as its mirror image.`
              : `Not tied: the ${otherName(speaker)} one stays where it is.`}
      </DetailsHead>
      {pair !== undefined && speaker.side && twin && !isTied(option, pair) && (
        <button
          type="button"
          disabled={locked}
          onClick={() =>
            planStore.edit(`mirror ${name}`, tiePair(option.id, pair, true, speaker.side))
          }
        >
          Tie, and mirror this onto the {otherName(speaker)}
        </button>
      )}
      {pair !== undefined && twin && (
        <button type="button" onClick={() => void openSearch(pair)}>
          Search spots for this pair
        </button>
      )}
      <WayNote board={board} speakerId={speaker.id} />
      <Boundary what="whether it fits">
        <Suspense fallback={null}>
          <FitNote board={board} speaker={speaker} />
        </Suspense>
      </Boundary>
      <SpeakerPlace {...part} />
      <button type="button" onClick={() => openSheet('map')}>
        Paint the panels
      </button>
      <CautionsNote compact />
      <SpeakerAim {...part} />
      <SpeakerKit {...part} />
      <Boundary what="how it sounds">
        <Suspense fallback={null}>
          <SpeakerSound {...part} />
        </Suspense>
      </Boundary>
    </>
  );
}

/** The search comes with its sheet: later than the first numbers. */
async function openSearch(pair: string): Promise<void> {
  try {
    const { searchFor } = await import('../answers/search/search-for');
    searchFor(pair);
  } catch {
    // The sheet says why it cannot be had.
    openSheet('search');
  }
}

const otherName = ({ side }: SpeakerInput): string => (side === 'left' ? 'right' : 'left');
