import type { ReactNode } from 'react';
import type { BuildSheet } from '../../model/sheet/sheet';
import { useView } from '../../store/react';
import { useReadings } from '../readings';
import { today } from '../weigh/today';

interface SheetPageProps {
  readonly sheet: BuildSheet;
  readonly title: string;
  readonly at: number;
  readonly count: number;
  readonly children: ReactNode;
}

/** One page, with what stands in the way of a flight at its head and the title block at its foot. */
export function SheetPage({ sheet: { banner, name, note }, title, at, count, children }: SheetPageProps) {
  return (
    <article className="sheet-page" data-testid="sheet-page" aria-label={`Page ${at} of ${count}: ${title}`}>
      {banner !== null && <p className="sheet-banner">{banner}</p>}
      <div className="sheet-body">{children}</div>
      <TitleBlock name={name} note={note} title={title} at={at} count={count} />
    </article>
  );
}

/** A longer name stands in two lines of smaller letters. */
const FITS_LARGE = 36;

interface TitleBlockProps extends Pick<SheetPageProps, 'title' | 'at' | 'count'> {
  readonly name: string;
  readonly note: string;
}

/** The data fields of ISO 7200 as far as there is something to put in them. */
function TitleBlock({ name, note, title, at, count }: TitleBlockProps) {
  const by = useView(({ sheet }) => sheet.by);
  const { units, from } = useReadings();
  return (
    <dl className="title-block">
      <Field label="Aircraft" value={name} wide strong={name.length <= FITS_LARGE} />
      <Field label="Build sheet" value={title} wide />
      <Field label="Date" value={today()} />
      <Field label="Page" value={`${at} of ${count}`} />
      <Field label="Stations from" value={from} wide />
      <Field label="Units" value={units === 'metric' ? 'mm, g' : 'in, oz'} />
      <Field label="By" value={by} />
      <div className="title-note">
        <dt className="unseen">Note</dt>
        <dd>{note}</dd>
      </div>
    </dl>
  );
}

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly wide?: boolean;
  readonly strong?: boolean;
}

const Field = ({ label, value, wide, strong }: FieldProps) => (
  <div data-wide={wide || undefined} data-strong={strong || undefined}>
    <dt>{label}</dt>
    <dd>{value}</dd>
  </div>
);
