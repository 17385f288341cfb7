import { useId, useState } from 'react';
import { setStory } from '../../plan/edits';
import { planStore, usePlan } from '../../store';
import './cautions.css';

/** Longer than this is no longer a note on the board. */
const LONGEST_STORY = 2000;

/** The plan's story on screen: to read, to put away, to write anew. */
export function StoryNote() {
  const story = usePlan((state) => state.plan.story ?? '');
  const openedAs = usePlan((state) => state.openedAs);
  const readOnly = usePlan((state) => state.readOnly !== null);
  const [putAway, setPutAway] = useState<number | null>(null);
  const [draft, setDraft] = useState<{ of: number; text: string } | null>(null);
  const id = useId();
  // Both belong to the plan they were made for: another plan opened starts afresh.
  const text = draft?.of === openedAs ? draft.text : null;
  const keep = () => {
    planStore.edit('change the story', setStory((text ?? '').trim()));
    setDraft(null);
  };

  if (text !== null)
    return (
      <section className="story" aria-label="Story">
        <label htmlFor={`${id}-text`}>The story of this plan</label>
        <textarea
          id={`${id}-text`}
          rows={4}
          maxLength={LONGEST_STORY}
          value={text}
          // biome-ignore lint/a11y/noAutofocus: it takes the place of the button just pressed
          autoFocus
          onChange={(event) => setDraft({ of: openedAs, text: event.target.value })}
          onKeyDown={(event) => {
            if (event.key === 'Escape') setDraft(null);
          }}
        />
        <div className="story-actions">
          <button type="button" onClick={keep}>
            Keep
          </button>
          <button type="button" onClick={() => setDraft(null)}>
            Leave as it was
          </button>
        </div>
      </section>
    );

  const write = () => setDraft({ of: openedAs, text: story });
  if (!story || putAway === openedAs)
    return (
      <section className="story story-away" aria-label="Story">
        {story && (
          <button type="button" onClick={() => setPutAway(null)}>
            Show the story
          </button>
        )}
        {!story && !readOnly && (
          <button type="button" onClick={write}>
            Write a story
          </button>
        )}
      </section>
    );
  return (
    <section className="story" aria-label="Story">
      <p>{story}</p>
      <div className="story-actions">
        {!readOnly && (
          <button type="button" onClick={write}>
            Edit the story
          </button>
        )}
        <button type="button" onClick={() => setPutAway(openedAs)}>
          Put away
        </button>
      </div>
    </section>
  );
}
