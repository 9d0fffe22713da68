/** How the start menu calls the drills; apart from them, since the menu stands before they are loaded. */
export const PRACTICE = {
  words: 'Practice on a hidden fault',
  about: 'A simulated vehicle with a fault you have to find, with a score and a debrief.',
} as const;
