/** A text with its first letter as a capital. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A text with its first letter as a small one, for within a sentence. */
export const lowered = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
