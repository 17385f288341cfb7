import { useState } from 'react';
import { useStore } from 'zustand';
import { planStore } from '../../store';
import { LONGEST_CAPTION, MOST_PICTURES } from '../../store/plan-pictures';
import { photoFrom } from '../room/small-picture';
import { PictureImage } from './picture-image';
import { planPictures, usePictures } from './pictures-store';

/** Adds, names, orders and removes the pictures of the build book. Stands beside the pages. */
export default function PictureFields() {
  const { pictures, problem } = usePictures((state) => state);
  const locked = useStore(planStore, ({ readOnly }) => readOnly !== null);
  const [refusals, setRefusals] = useState<readonly string[]>([]);
  const take = async (files: readonly File[]) => {
    const refused: string[] = [];
    for (const file of files) {
      const answer = await photoFrom(file);
      if (!answer.ok) refused.push(answer.problem);
      else if ((await planPictures.add({ id: newId(), caption: '', ...answer.picture })) === 'full')
        refused.push(`“${file.name}”: a book holds ${MOST_PICTURES} pictures.`);
    }
    setRefusals(refused);
  };
  return (
    <fieldset className="room-pictures">
      <legend>Pictures in the book</legend>
      <label className="room-choice">
        <span>Add JPEG, PNG or WebP</span>
        <input
          type="file"
          multiple
          disabled={locked}
          accept="image/jpeg,image/png,image/webp"
          onChange={(event) => {
            void take([...(event.target.files ?? [])]);
            event.target.value = '';
          }}
        />
      </label>
      {[...refusals, ...(problem ? [problem] : [])].map((line) => (
        <p key={line} role="alert">
          {line}
        </p>
      ))}
      <ol>
        {pictures.map((picture, place) => {
          const name = `picture ${place + 1}`;
          return (
            <li key={picture.id}>
              <PictureImage picture={picture} alt="" />
              <input
                type="text"
                aria-label={`Caption of ${name}`}
                placeholder="Caption"
                value={picture.caption}
                maxLength={LONGEST_CAPTION}
                readOnly={locked}
                onChange={(event) => void planPictures.caption(picture.id, event.target.value)}
              />
              <div className="word-buttons">
                <button
                  type="button"
                  disabled={locked || place === 0}
                  onClick={() => void planPictures.move(picture.id, -1)}
                >
                  Earlier<span className="unseen">: {name}</span>
                </button>
                <button
                  type="button"
                  disabled={locked || place === pictures.length - 1}
                  onClick={() => void planPictures.move(picture.id, 1)}
                >
                  Later<span className="unseen">: {name}</span>
                </button>
                <button
                  type="button"
                  disabled={locked}
                  onClick={() => void planPictures.remove(picture.id)}
                >
                  Remove<span className="unseen">: {name}</span>
                </button>
              </div>
            </li>
          );
        })}
      </ol>
      <p className="quiet-text">
        Kept in this browser beside the plan, not in its file; made smaller, and without what a
        camera writes into them.
      </p>
    </fieldset>
  );
}

const newId = (): string =>
  [...crypto.getRandomValues(new Uint8Array(12))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('');
