import { useState } from 'react';
import { useStore } from 'zustand';
import { LONGEST_SHOP_NAME } from '../../store/paper-settings';
import { paperSettings, settingsProblem, usePaperSettings } from '../settings';
import { logoFrom } from './small-picture';

/** The shop's own head of the page: kept on this machine, and in no plan file. */
export function ShopFields() {
  const { shopName, shopLogo } = usePaperSettings((settings) => settings);
  const notKept = useStore(settingsProblem, ({ text }) => text);
  const [problem, setProblem] = useState<string | null>(null);
  const take = async (file: File | undefined) => {
    if (!file) return;
    const answer = await logoFrom(file);
    setProblem(answer.ok ? null : answer.problem);
    if (answer.ok) paperSettings.setState({ shopLogo: answer.picture });
  };
  return (
    <details className="room-shop">
      <summary>Your shop on the page</summary>
      <label className="room-choice">
        <span>Name</span>
        <input
          type="text"
          value={shopName}
          maxLength={LONGEST_SHOP_NAME}
          onChange={(event) => paperSettings.setState({ shopName: event.target.value })}
        />
      </label>
      <label className="room-choice">
        <span>Logo, as PNG, JPEG, WebP or SVG</span>
        <input
          type="file"
          accept="image/png,image/jpeg,image/webp,image/svg+xml"
          onChange={(event) => {
            void take(event.target.files?.[0]);
            event.target.value = '';
          }}
        />
      </label>
      {problem && <p role="alert">{problem}</p>}
      {notKept && <p role="alert">{notKept}</p>}
      {shopLogo && (
        <p className="room-logo">
          <img src={shopLogo} alt="Your logo" />
          <button type="button" onClick={() => paperSettings.setState({ shopLogo: null })}>
            Remove the logo
          </button>
        </p>
      )}
      <p className="quiet-text">Kept in this browser only.</p>
    </details>
  );
}
