import { answerAsks } from './answerAsks';
import { meshAnswer } from './meshAnswer';

answerAsks(meshAnswer);
