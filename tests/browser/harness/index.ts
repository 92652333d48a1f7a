export { type Bench, type BenchOptions, expectClean, openBench } from './bench';
export { type DragOptions, drag, type PagePoint } from './drag';
export { axe, screenshot } from './inspect';
