/** A plan to record on a drive, in the dialogue of lines. */
import { drivePlan } from '../../session/drive-plan.ts';
import { noteOf, planLines } from '../screens/plan-words.ts';
import { helpLine, sayAll, type Word, type WordPlace } from './plain-words.ts';
import { performSaved } from './until-saved.ts';

export const PLAN_WORD: Word<WordPlace> = {
  words: ['plan'],
  help: helpLine('plan', "what to record on a drive, for an intermittent that won't act up here"),
  does: async (place) => {
    const { opened, dialogue } = place;
    const plan = drivePlan(opened.driver.session());
    if (!plan)
      return sayAll(place, ['This procedure watches nothing that can be recorded on a drive.']);
    for (const line of planLines(plan, opened.bind)) dialogue.say(line);
    const word = await dialogue.ask('Note it in the record? Type yes: ');
    if (word?.trim().toLowerCase() !== 'yes') return sayAll(place, ['It was not noted.']);
    if ((await performSaved(place, noteOf(plan, opened.bind))).ok) dialogue.say('Noted.');
    return null;
  },
};
