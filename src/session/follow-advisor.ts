/** An advisor over the circuit as it is known in each state: a value that is set weighs all readings anew. */
import type { Model } from '../circuit/model.ts';
import type { Advisor } from './advisor.ts';
import type { About } from './choose-suspects.ts';
import { createAdvisor } from './create-advisor.ts';
import type { Session } from './session.ts';

/** `modelOf` gives the same model while the same is known. */
export function followAdvisor(modelOf: (session: Session) => Model, about: About): Advisor {
  const made = new WeakMap<Model, Advisor>();
  const at = (session: Session): Advisor => {
    const model = modelOf(session);
    const advisor = made.get(model) ?? createAdvisor(model, about);
    made.set(model, advisor);
    return advisor;
  };
  return {
    diagnosis: (session) => at(session).diagnosis(session),
    isReady: (session) => at(session).isReady(session),
    prepare: (session) => at(session).prepare(session),
    prepareWeigh: (session, faults) => at(session).prepareWeigh(session, faults),
    suspects: (session) => at(session).suspects(session),
    nextTests: (session) => at(session).nextTests(session),
    weigh: (session, faults) => at(session).weigh(session, faults),
  };
}
