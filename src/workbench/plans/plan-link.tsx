import { useId, useRef, useState } from 'react';
import { planToFragment } from '../../exchange';
import { planStore } from '../../store';
import { openLink } from './linked-plan';

export interface PlanLinkProps {
  /** The plan on the board can be written by this version. */
  may: boolean;
  /** A link was opened: nothing more to do here. */
  onOpened: () => void;
  /** Says in words what was done or why not. */
  onSay: (text: string) => void;
}

const count = new Intl.NumberFormat('en-GB');

/** The open plan as a link, and a link opened: nothing of it ever leaves the address. */
export function PlanLink({ may, onOpened, onSay }: PlanLinkProps) {
  const [link, setLink] = useState<string | null>(null);
  const [typed, setTyped] = useState('');
  const field = useRef<HTMLInputElement>(null);
  const id = useId();

  const make = () => {
    const made = planToFragment(planStore.getState().plan);
    if (made.ok) {
      setLink(location.href.replace(/#.*$/, '') + made.fragment);
      onSay('');
    } else
      onSay(
        `This plan would make a link of ${count.format(made.length)} characters; more than ` +
          `${count.format(made.most)} are not made, since mail and messages cut them. ` +
          'Send it as a file.',
      );
  };
  const copy = async () => {
    field.current?.select();
    try {
      await navigator.clipboard.writeText(link ?? '');
      onSay('The link is copied.');
    } catch {
      onSay('This browser does not let the page copy: the link is marked, copy it by keyboard.');
    }
  };
  const open = async () => {
    if (typed.trim() === '') return;
    if (await openLink(typed)) onOpened();
  };

  return (
    <section className="plan-link" aria-labelledby={`${id}-head`}>
      <h3 id={`${id}-head`}>By a link</h3>
      <p>
        A link carries the whole plan in the part behind the #, which browsers send to nobody. Who
        opens it looks at the plan and can keep a copy.
        {isThisMachine() &&
          ' This page is served by this machine alone: elsewhere, put the part from # on behind ' +
            'the address of the Earpath there, or paste the link below.'}
      </p>
      <div className="plan-link-row">
        <button type="button" disabled={!may} onClick={make}>
          Make a link
        </button>
        {link !== null && (
          <>
            <input
              ref={field}
              type="text"
              readOnly
              aria-label="Link that carries this plan"
              value={link}
              onFocus={(event) => event.target.select()}
            />
            <button type="button" onClick={copy}>
              Copy it
            </button>
          </>
        )}
      </div>
      <form
        className="plan-link-row"
        onSubmit={(event) => {
          event.preventDefault();
          void open();
        }}
      >
        <label htmlFor={`${id}-open`}>Open a link</label>
        <input
          id={`${id}-open`}
          type="text"
          autoComplete="off"
          spellCheck={false}
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
        />
        <button type="submit">Look at it</button>
      </form>
    </section>
  );
}

const isThisMachine = (): boolean => /^(localhost|127\.|\[::1\])/.test(location.hostname);
