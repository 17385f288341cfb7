import { Suspense, useEffect, useRef } from 'react';
import { optionTitle } from '../../plan/edits';
import { seatName } from '../../plan/names';
import { type LengthUnit, sessionStore, useSession } from '../../store';
import type { PageSize } from '../../store/paper-settings';
import { usePaperFacts } from '../facts';
import { PAPERS, paperOf } from '../papers';
import { paperSettings, usePaperSettings } from '../settings';
import { en } from '../words/en';
import { LANGUAGES } from '../words/languages';
import { Choice } from './choice';
import { ShopFields } from './shop-fields';

/** What is printed and how: stands beside the pages, and never on paper. */
export function RoomBar() {
  const paper = useSession((session) => session.paper);
  const unit = useSession((session) => session.lengthUnit);
  const { pageSize, language } = usePaperSettings((settings) => settings);
  const { Fields } = paperOf(paper);
  const head = useRef<HTMLHeadingElement>(null);
  // Focus comes along into the room; it would be lost with the board.
  useEffect(() => head.current?.focus(), []);
  return (
    <aside className="room-bar" aria-label="On paper">
      <h1 ref={head} tabIndex={-1}>
        On paper
      </h1>
      <button type="button" onClick={() => sessionStore.setState({ paper: null })}>
        Back to the board
      </button>
      <Choice
        label="Paper"
        value={paperOf(paper).id}
        choices={PAPERS.map(({ id, title }) => ({ value: id, label: en.words[title] }))}
        onChange={(next) => sessionStore.setState({ paper: next })}
      />
      <Whose />
      <Choice<PageSize>
        label="Page size"
        value={pageSize}
        choices={[
          { value: 'A4', label: 'A4, 210 × 297 mm' },
          { value: 'Letter', label: 'Letter, 8.5 × 11 in' },
        ]}
        onChange={(next) => paperSettings.setState({ pageSize: next })}
      />
      <Choice
        label="Language of the paper"
        value={LANGUAGES[language] ? language : 'en'}
        choices={Object.entries(LANGUAGES).map(([id, { name }]) => ({ value: id, label: name }))}
        onChange={(next) => paperSettings.setState({ language: next })}
      />
      <Choice<LengthUnit>
        label="Lengths"
        value={unit}
        choices={[
          { value: 'mm', label: 'Millimetres' },
          { value: 'in', label: 'Inches' },
        ]}
        onChange={(next) => sessionStore.setState({ lengthUnit: next })}
      />
      {Fields && (
        <Suspense fallback={null}>
          <Fields />
        </Suspense>
      )}
      <ShopFields />
      <button type="button" className="primary" onClick={() => window.print()}>
        Print, or save as PDF…
      </button>
      <p className="quiet-text">
        In the print window leave the size at 100 %, with no scaling to fit the page.
      </p>
    </aside>
  );
}

/** Which option the paper is about, and who listens. */
function Whose() {
  const answer = usePaperFacts();
  if (!answer.ok) return null;
  const { plan, option, result, seat } = answer.facts;
  return (
    <>
      {plan.options.length > 1 && (
        <Choice
          label="Option"
          value={option.id}
          choices={plan.options.map((one) => ({ value: one.id, label: optionTitle(one) }))}
          onChange={(next) => sessionStore.setState({ option: next })}
        />
      )}
      {seat && (
        <Choice
          label="Listen at"
          value={seat.id}
          choices={result.seats.map(({ id }) => ({ value: id, label: seatName(id) }))}
          onChange={(next) => sessionStore.setState({ seat: next })}
        />
      )}
    </>
  );
}
