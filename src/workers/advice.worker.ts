import { advise } from '../model/advice/advise';
import type { Aircraft } from '../model/document/types';
import type { AdviceTask } from './adviceTask';
import { answerAsks } from './answerAsks';
import { sharingWithLast } from './sharedWith';

const shared = sharingWithLast<Aircraft>();

answerAsks(({ aircraft, given, spoken }: AdviceTask) => advise(shared(aircraft), given, spoken));
