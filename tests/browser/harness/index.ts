export { type Bench, type BenchOptions, expectClean, openBench } from './bench';
export { type DragOptions, drag, type PagePoint } from './drag';
export { noFigures } from './findings';
export { axe } from './inspect';
export { atRest, judgeScreen } from './judgeScreen';
export { type Look, look, middleOf, onPage, placeOf, settled, showView } from './look';
export { openFold, turnTo } from './places';
export { cutTexts, overlappingTexts, seenTexts } from './texts';
export { put, walk } from './walk';
