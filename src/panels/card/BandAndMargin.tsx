import { MarginFields } from '../stability/MarginFields';
import { BandFields } from './BandFields';

/** The band stated, and the margin wanted. */
export default function BandAndMargin() {
  return (
    <>
      <BandFields />
      <MarginFields />
    </>
  );
}
