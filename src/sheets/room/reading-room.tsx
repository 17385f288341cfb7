import { Suspense, useEffect } from 'react';
import { sessionStore, usePlan, useSession } from '../../store';
import { PageRule } from '../page/page-rule';
import { usePaperTitle } from '../page/paper-title';
import { paperOf } from '../papers';
import { usePaperSettings } from '../settings';
import { useWords, WordsProvider } from '../words/use-words';
import { RoomBar } from './room-bar';
import { Waiting } from './waiting';

/**
 * Where papers are read and printed: what is chosen about them stands beside the pages, which are
 * as large as they will be on paper. Stands in the place of the board while `session.paper` is set.
 */
export function ReadingRoom() {
  const language = usePaperSettings((settings) => settings.language);
  const unit = useSession((session) => session.lengthUnit);
  return (
    <WordsProvider language={language} unit={unit}>
      <Room />
    </WordsProvider>
  );
}

function Room() {
  const { Body, id } = paperOf(useSession(({ paper }) => paper));
  const size = usePaperSettings(({ pageSize }) => pageSize);
  const { locale } = useWords();
  useFileName();
  return (
    <div className="reading-room">
      <PageRule size={size} />
      <RoomBar />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is scrolled by keyboard too */}
      <main className="room-pages" lang={locale} aria-label="Pages" tabIndex={0} id="pages">
        <Suspense key={id} fallback={<Waiting />}>
          <Body />
        </Suspense>
      </main>
    </div>
  );
}

/** Browsers name the PDF after the page's title. */
function useFileName(): void {
  const title = usePlan((state) => state.plan.title);
  const paper = usePaperTitle();
  useEffect(() => {
    const before = document.title;
    document.title = `${title} – ${paper}`;
    return () => {
      document.title = before;
    };
  }, [title, paper]);
}

/** Leaves the reading room. */
export const backToBoard = (): void => sessionStore.setState({ paper: null });
