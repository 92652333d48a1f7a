import { Icon } from '../icons';
import { useReadings } from '../readings';
import type { Sort, SortKey } from './order';

interface ManifestHeadProps {
  readonly sort: Sort;
  readonly onSort: (sort: Sort) => void;
}

/** The heads of the columns; each sorts by its own. */
export function ManifestHead({ sort, onSort }: ManifestHeadProps) {
  const say = useReadings();
  return (
    <thead>
      <tr>
        <SortHead label="Name" of="name" sort={sort} onSort={onSort} />
        <SortHead label="Mass" of="mass" sort={sort} onSort={onSort} />
        <SortHead
          label="Station"
          title={`Stations from ${say.from}`}
          of="station"
          sort={sort}
          onSort={onSort}
        />
      </tr>
      <tr className="moment-head">
        <SortHead
          label="Moment about the CG"
          title="Moment about the CG: nose-heavy to the left, tail-heavy to the right"
          of="moment"
          sort={sort}
          onSort={onSort}
          wide
        />
      </tr>
    </thead>
  );
}

interface SortHeadProps {
  readonly label: string;
  readonly title?: string;
  readonly of: SortKey;
  readonly sort: Sort;
  readonly onSort: (sort: Sort) => void;
  readonly wide?: boolean;
}

function SortHead({ label, title = label, of, sort, onSort, wide = false }: SortHeadProps) {
  const sorted = sort.key === of;
  return (
    <th
      scope="col"
      colSpan={wide ? 3 : 1}
      aria-sort={sorted ? (sort.falling ? 'descending' : 'ascending') : 'none'}
    >
      <button
        type="button"
        title={title}
        onClick={() => onSort({ key: of, falling: sorted && !sort.falling })}
      >
        {wide ? (
          <>
            <span aria-hidden="true">◂ Moment ▸</span>
            <span className="unseen">{label}</span>
          </>
        ) : (
          label
        )}
        {sorted && <Icon name={sort.falling ? 'down' : 'up'} />}
      </button>
    </th>
  );
}
