import { Fragment } from 'react';
import { Modal } from './Modal';

const shortcuts: readonly {
  readonly keys: readonly string[];
  readonly does: string;
  readonly where: string;
}[] = [
  { keys: ['1', '2', '3', '4'], does: 'Side, top, front and free view', where: 'Anywhere' },
  { keys: ['Space'], does: 'Play or pause the burn', where: 'Anywhere' },
  { keys: ['Ctrl Z'], does: 'Undo', where: 'Anywhere' },
  { keys: ['Ctrl Y', 'Ctrl ⇧ Z'], does: 'Redo', where: 'Anywhere' },
  { keys: ['Ctrl S'], does: 'Save as a file', where: 'Anywhere' },
  { keys: ['?'], does: 'This list', where: 'Anywhere' },
  {
    keys: ['←', '→', '↑', '↓'],
    does: 'Move the selected thing by 1 mm, with ⇧ by 10 mm',
    where: 'Stage, beam',
  },
  { keys: ['PgUp', 'PgDn'], does: 'Raise or lower it', where: 'Stage, beam' },
  { keys: ['[', ']'], does: 'Select the next thing forward or aft', where: 'Stage, beam' },
  { keys: ['Esc'], does: 'Put back what is being dragged, or select nothing', where: 'Stage, beam' },
  { keys: ['W', 'A', 'S', 'D'], does: 'Turn the free view; shift an elevation', where: 'Stage' },
  { keys: ['+', '−'], does: 'Nearer, farther', where: 'Stage' },
  { keys: ['F'], does: 'All of the aircraft', where: 'Stage' },
  { keys: ['Home'], does: 'The view as it began', where: 'Stage' },
  { keys: ['C', 'X', 'E', 'Q'], does: 'Cut, x-ray, lift out, quiet', where: 'Stage' },
  { keys: ['Alt'], does: 'While dragging: go free of the grid', where: 'Stage, beam' },
  { keys: ['↑', '↓'], does: 'Select the line above or below', where: 'Manifest' },
  { keys: ['⇧ ↑', '⇧ ↓'], does: 'Choose the next one too', where: 'Manifest' },
  { keys: ['Alt ↑', 'Alt ↓'], does: 'Put the line higher or lower in your own order', where: 'Manifest' },
  { keys: ['L'], does: 'Lock or unlock', where: 'Manifest' },
  { keys: ['H'], does: 'Hide on the stage, or show', where: 'Manifest' },
  { keys: ['D'], does: 'Duplicate', where: 'Manifest' },
  { keys: ['M'], does: 'Mirror to the other side', where: 'Manifest' },
  { keys: ['Del'], does: 'Take out', where: 'Manifest' },
  { keys: ['↑', '↓'], does: 'More or less fuel, by 1 %', where: 'CG travel' },
  { keys: ['Drag'], does: 'A part: moves it; the ground: turns or shifts the view', where: 'Mouse' },
  { keys: ['⇧ drag'], does: 'In the free view: lifts or lowers the part', where: 'Mouse' },
  { keys: ['⇧ click', 'Ctrl click'], does: 'Choose several, to move, align or space them', where: 'Mouse' },
  { keys: ['Wheel'], does: 'Nearer or farther, at the pointer', where: 'Mouse' },
  { keys: ['One finger'], does: 'On a part: moves it; beside it: turns the view', where: 'Touch' },
  { keys: ['Long press'], does: 'Choose several, to move, align or space them', where: 'Touch' },
  { keys: ['Two fingers'], does: 'Pinch: nearer or farther', where: 'Touch' },
];

const places = ['Anywhere', 'Stage', 'Stage, beam', 'Manifest', 'CG travel', 'Mouse', 'Touch'];

/** Every key that does something. */
export function Shortcuts({ onClose }: { readonly onClose: () => void }) {
  return (
    <Modal title="Keys" onClose={onClose}>
      {places.map((place) => (
        <Fragment key={place}>
          <h3>{place}</h3>
          <table className="shortcuts">
            <tbody>
              {shortcuts
                .filter(({ where }) => where === place)
                .map(({ keys, does }) => (
                  <tr key={does}>
                    <th scope="row">
                      {keys.map((key) => (
                        <Fragment key={key}>
                          <kbd>{key}</kbd>{' '}
                        </Fragment>
                      ))}
                    </th>
                    <td>{does}</td>
                  </tr>
                ))}
            </tbody>
          </table>
        </Fragment>
      ))}
    </Modal>
  );
}
