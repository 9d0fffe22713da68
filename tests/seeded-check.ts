/** fast-check, whose cases would follow from the time, with cases that follow from the seed. */
import fc from 'fast-check';
import { SEED } from './campaign.ts';

fc.configureGlobal({ seed: SEED });

export default fc;
