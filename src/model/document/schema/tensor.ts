import { inertiaGmm2, record } from './fields';

/** Products are tensor elements: xy = −∫xy dm. */
export const tensor = record({
  xx: inertiaGmm2,
  yy: inertiaGmm2,
  zz: inertiaGmm2,
  xy: inertiaGmm2,
  xz: inertiaGmm2,
  yz: inertiaGmm2,
});
