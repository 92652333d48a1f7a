import { estimateStability } from '../model/stability/estimateStability';
import { answerAsks } from './answerAsks';
import type { StabilityTask } from './stabilityTask';

answerAsks(({ input, detail }: StabilityTask) => estimateStability(input, detail));
