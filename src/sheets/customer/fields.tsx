import { paperSettings, usePaperSettings } from '../settings';

/** What is chosen for the customer sheet alone. */
export default function CustomerFields() {
  const strip = usePaperSettings(({ arrivalStrip }) => arrivalStrip);
  return (
    <label className="tick">
      <input
        type="checkbox"
        checked={strip}
        onChange={(event) => paperSettings.setState({ arrivalStrip: event.target.checked })}
      />
      The arrival of sound in pictures
    </label>
  );
}
