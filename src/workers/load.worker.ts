import { loadEnvelopeOf } from '../model/loads/loadStates';
import { answerAsks } from './answerAsks';
import type { LoadTask } from './loadTask';

answerAsks(({ aircraft, down }: LoadTask) => loadEnvelopeOf(aircraft, down));
