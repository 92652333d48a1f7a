import fc from 'fast-check';
import { seed } from './seed';

// A failing case is told at once, with the seed and path that replay it; to have it shrunk, run it again with
// endOnFailure off. Shrinking by itself can take longer than the whole run.
fc.configureGlobal({ endOnFailure: true, seed });
