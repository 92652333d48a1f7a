import { eachVariant } from '../model/document/variants';
import { judgedVariant } from '../model/judgement/judgedVariant';
import { answerAsks } from './answerAsks';
import type { VariantProgress, VariantTask } from './variantTask';

answerAsks<VariantTask, null, VariantProgress>(({ aircraft, down }, onProgress) => {
  for (const { variant, aircraft: shown } of eachVariant(aircraft)) {
    onProgress(judgedVariant(variant.id, shown, down));
  }
  return null;
});
