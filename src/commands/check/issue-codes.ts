/** Every stable issue code of the files that people write, and of proofs, with what it means in one line: for SARIF rules and the guide. */
export const ISSUE_CODES: Readonly<Record<string, string>> = {
  // Text and shape
  'unreadable-file': 'A file or folder cannot be read.',
  'file-too-large': 'A file is larger or deeper than any that a person writes.',
  'yaml-syntax': 'The text is not valid YAML.',
  'yaml-version': 'The file asks for another version of YAML than 1.2.',
  'yaml-alias': 'Anchors, aliases and tags are not used.',
  'bad-key': 'A key is not a plain word.',
  'repeated-key': 'A key stands twice in the same place.',
  'bad-number': 'A number is not finite.',
  'invisible-character': 'A text holds a character that cannot be seen.',
  'unknown-kind': 'Nothing at the top says what the file is.',
  'unknown-key': 'A key is not known here.',
  'missing-key': 'A key that must be there is missing.',
  'unknown-choice': 'A word is none of those allowed here.',
  'wrong-type': 'A value is of the wrong type.',
  'bad-form': 'A value is not written in the form it must have.',
  'bad-name': 'A name holds letters or signs it cannot hold.',
  'out-of-bounds': 'A text or list is too long, too short, or a number too large or small.',
  // Names between files
  'repeated-name': 'Two files of a kind have the same name.',
  'file-name': 'A file is named otherwise than what it holds.',
  'unknown-procedure': 'A procedure that is named does not exist.',
  'unknown-circuit': 'A circuit that is named does not exist or has errors.',
  'unknown-colour': 'A wire colour is not in the letters of the standard.',
  // Names inside a procedure
  'unknown-step': 'A step that is named does not exist.',
  'unknown-terminal': 'A terminal is not in the circuit.',
  'unknown-place': 'A place in a text is no terminal of the circuit.',
  'unknown-part': 'A part cannot be unplugged or is not in the circuit.',
  'unknown-fault': 'A conclusion or a job names a fault that the circuit does not have.',
  'unknown-caution': 'A caution that is named does not exist.',
  'unknown-outcome': 'The usual answer is none of the outcomes.',
  'unknown-look': 'An instrument never shows this look.',
  'unknown-need': 'A sub-procedure has no such need.',
  'missing-need': 'A sub-procedure is not given what it needs.',
  'unknown-result': 'A sub-procedure never ends in this result.',
  'missing-result': 'A result of a sub-procedure leads nowhere.',
  'result-outside': 'Only a sub-procedure ends in a result.',
  'sub-procedure': 'A sub-procedure cannot be run by itself.',
  'circular-use': 'Sub-procedures use each other in a circle.',
  // One step
  'empty-step': 'A step asks for nothing.',
  'missing-text': 'A step or conclusion does not say what to do or what is wrong.',
  'missing-repair': 'A conclusion does not say what puts it right.',
  'missing-outcomes': 'A measurement has no outcomes.',
  'wrong-outcome': 'An outcome does not fit what is read.',
  'bad-value': 'A value or its unit is not understood.',
  'nothing-computed': 'There is nothing to compute limits from.',
  'empty-range': 'An outcome holds no value.',
  'overlapping-ranges': 'Two outcomes hold the same values.',
  'range-gap': 'Values that no outcome holds.',
  'look-gap': 'A look that no outcome holds.',
  'overlapping-looks': 'Two outcomes hold the same look.',
  'refused-test': 'A test that is dangerous or impossible.',
  'missing-why': 'A step does not say what its result tells.',
  'missing-caution': 'A vehicle state without its caution.',
  // The tree
  'unreachable-step': 'Nothing leads to a step.',
  'endless-loop': 'From a step no way leads to a conclusion.',
  'same-target': 'All outcomes of a step lead to the same place.',
  'missing-retest': 'A conclusion names no retest.',
  'bad-retest': 'A retest that reads nothing.',
  // The proof
  'wrong-conclusion': 'A fault ends at a conclusion that stands for another repair.',
  'missed-fault': 'A fault ends at "no fault found" though a test shows it.',
  'healthy-blamed': 'A healthy circuit ends at a conclusion that blames something.',
  'uncovered-fault': 'No conclusion stands for a fault of the circuit.',
  'named-elsewhere':
    'A fault ends at a conclusion for its repair that does not name it, while another does.',
  'dead-end': 'A reading that no outcome holds.',
  'endless-walk': 'A fault goes round in the tree without end.',
  'good-too-narrow': 'A healthy circuit does not read "good".',
  'good-too-wide':
    'A fault that ends wrongly passed as "good" though it reads otherwise than a healthy circuit.',
  'reversed-leads': 'The leads are the wrong way round.',
  'separates-nothing': 'A step that all faults leave by the same outcome.',
  'never-reached': 'A branch that no fault ever comes to.',
  'blind-retest': 'A retest that passes with the fault still there.',
  // Jobs and circuits share codes with the above; circuits add these
  'no-path-to-ground': 'A part of the circuit floats.',
  'no-input': 'No input of the module reads the sensor.',
};

/** What a code means; a code without an entry is shown in words. */
export function codeWords(code: string): string {
  return ISSUE_CODES[code] ?? `${code.replace(/-/g, ' ')}.`;
}
