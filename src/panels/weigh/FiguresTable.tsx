import { Labelled } from '../glossary/Labelled';

interface FiguresTableProps {
  readonly by: string;
  readonly rows: readonly { readonly name: string; readonly listed: string; readonly measured: string }[];
}

/** List and measurement beside each other, each with its ±. */
export function FiguresTable({ by, rows }: FiguresTableProps) {
  return (
    <table className="weigh-figures">
      <caption className="unseen">{`By the list and by the ${by}`}</caption>
      <thead>
        <tr>
          <td />
          <th scope="col">By the list</th>
          <th scope="col">{by === 'swing' ? 'By the swing' : 'As measured'}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ name, listed, measured }) => (
          <tr key={name}>
            <th scope="row">
              <Labelled>{name}</Labelled>
            </th>
            <td className="figure">{listed}</td>
            <td className="figure">{measured}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
