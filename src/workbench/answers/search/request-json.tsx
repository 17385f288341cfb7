import { useId, useRef, useState } from 'react';
import type { AnyRequest } from './build-request';

/** The request as the command line takes it, to copy. */
export function RequestJson({ request }: { request: AnyRequest }) {
  const [open, setOpen] = useState(false);
  const [said, setSaid] = useState('');
  const field = useRef<HTMLTextAreaElement>(null);
  const id = useId();
  const text = requestText(request);
  async function copy(): Promise<void> {
    field.current?.select();
    try {
      await navigator.clipboard.writeText(text);
      setSaid('Copied.');
    } catch {
      // Selected, the text can be copied by hand.
      setSaid('The browser did not copy it; it is selected: press Ctrl C.');
    }
  }
  return (
    <div className="search-json">
      <button
        type="button"
        className="words small"
        aria-expanded={open}
        aria-controls={open ? id : undefined}
        onClick={() => setOpen(!open)}
      >
        Request as JSON…
      </button>
      {open && (
        <div id={id}>
          <textarea
            ref={field}
            readOnly
            rows={8}
            spellCheck={false}
            value={text}
            aria-label="The request as JSON"
          />
          <p className="row">
            <button type="button" onClick={copy}>
              Copy
            </button>
            <span role="status">{said}</span>
          </p>
          <p className="footnote">
            Save it as request.json and the plan as plan.json, and the command line finds the same:
            npm run --silent search -- plan.json request.json
          </p>
        </div>
      )}
    </div>
  );
}

/** The text of a request file. */
export const requestText = (request: AnyRequest): string => JSON.stringify(request, null, 2);
