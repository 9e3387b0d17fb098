import type { SvgElement } from '../xml/tree';

/** The language that drawings are read in, as long as nobody can say which: the one most files offer. */
const language = 'en';

/** Whether an element's systemLanguage, requiredExtensions and requiredFeatures let it be drawn (SVG 2, section 5.10). */
export function conditionsHold({ attributes }: SvgElement): boolean {
    // SVG 2 dropped requiredFeatures: all are there. Nobody's extensions are.
    if (attributes.requiredExtensions !== undefined) return false;
    const wanted = attributes.systemLanguage;
    if (wanted === undefined) return true;
    return wanted.split(',').some((tag) => {
        const name = tag.trim().toLowerCase();
        return name === language || name.startsWith(`${language}-`);
    });
}

/** What a `switch` shows: the first child whose conditions hold. */
export function chosenChild(element: SvgElement): SvgElement | undefined {
    return element.children.find((child) => child.name !== 'title' && child.name !== 'desc' && conditionsHold(child));
}
