import { Dialog } from '../dialog';
import { KEY_LINES } from './keys';

/** The short list of keys. */
export function KeysDialog({ open, onClose }: { open: boolean; onClose: () => void }) {
  return (
    <Dialog
      open={open}
      onClose={onClose}
      title="Keys"
      lead="Everything can also be reached with Tab and Enter. On a Mac, Ctrl is ⌘."
    >
      <table className="numbers">
        <caption className="unseen">Keys and what they do</caption>
        <thead>
          <tr>
            <th scope="col" className="text">
              Press
            </th>
            <th scope="col" className="text">
              to
            </th>
          </tr>
        </thead>
        <tbody>
          {KEY_LINES.map(({ keys, does }) => (
            <tr key={does}>
              <th scope="row">
                <span className="keys">
                  {keys.map((key) => (
                    <kbd key={key}>{key}</kbd>
                  ))}
                </span>
              </th>
              <td className="text wrap">{does}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Dialog>
  );
}
