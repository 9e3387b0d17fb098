const letters = String.raw`\u00C0-\u00D6\u00D8-\u00F6\u00F8-\u02AF\u0370-\u1FFF\u2C00-\uD7FF`;

/** Marks that stand behind the letter they belong to: never the first of a name. */
const marks = String.raw`\u0300-\u036F`;

/**
 * A name of the language: of a recipe, a blank, a step, a board. It is written once more in the grammar (the terminal ID), which cannot
 * import; a test holds the two equal.
 */
export const namePattern = new RegExp(`[A-Za-z_µ${letters}][\\wµ²³${marks}${letters}-]*`);

const wholeName = new RegExp(`^(?:${namePattern.source})$`);
const everyName = new RegExp(namePattern.source, 'g');
const everyRecipe = new RegExp(`\\brecipe\\s+(${namePattern.source})`, 'g');

export function isName(text: string): boolean {
    return wholeName.test(text);
}

/** Every name, and every other word that could be one, of a text. O(n) */
export function namesIn(text: string): Set<string> {
    return new Set(text.match(everyName));
}

/** Names that follow the word `recipe` in a text, be it read as one or not. O(n) */
export function recipesIn(text: string): Set<string> {
    return new Set(Array.from(text.matchAll(everyRecipe), (match) => match[1]!));
}
