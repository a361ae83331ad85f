/** American English is British here, but for the words that differ. */
export const american = (text: string): string => text.replaceAll("avour", "avor").replaceAll("ppetiser", "ppetizer").replaceAll("the toilets", "the restrooms");
