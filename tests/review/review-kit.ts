import type { ReviewAnswer } from '../../server/engine/jobs';
import type { Review } from '../../shared/review/review';
import { type MemoryWorkshop, memoryWorkshop } from '../kit/memory-workshop';
import { art, inlayRecipe } from '../kit/shop';

type Files = Readonly<Record<string, string | Uint8Array>>;

/** A version of a recipe: its text, and its art where that differs from the shop's. */
export interface VersionText {
    readonly text: string;
    readonly art?: Files;
}

const shops = new Map<string, Promise<MemoryWorkshop>>();

/** One workshop for each set of art files, since starting one costs more than a review. */
function shopWith(files: Files): Promise<MemoryWorkshop> {
    const key = JSON.stringify(files);
    const known = shops.get(key) ?? memoryWorkshop(files);
    shops.set(key, known);
    return known;
}

async function opened({ text, art: files = art }: VersionText) {
    const { workshop, open } = await shopWith(files);
    const document = await open(text);
    const [recipe] = workshop.recipes(document);
    if (recipe === undefined) throw new Error('There is no recipe in this text.');
    return { workshop, asked: { recipe, exists: true, textFindings: workshop.textFindings(document) } };
}

/** Reviews two texts by the engine that the command line uses. */
export async function answer(before: VersionText, after: VersionText, pictures = false): Promise<ReviewAnswer> {
    const old = await opened(before);
    const now = await opened(after);
    const arts = await old.workshop.arts.of(old.asked.recipe);
    return now.workshop.ask({
        do: 'review',
        ...now.asked,
        from: 'after.kerf',
        before: { ...old.asked, from: 'before.kerf', arts },
        pictures,
    });
}

export async function review(before: string | VersionText, after: string | VersionText): Promise<Review> {
    const version = (of: string | VersionText): VersionText => (typeof of === 'string' ? { text: of } : of);
    return (await answer(version(before), version(after))).review;
}

/** A change of the good inlay recipe, as both texts. */
export function inlayChange(
    parts: Parameters<typeof inlayRecipe>[0],
    from: Parameters<typeof inlayRecipe>[0] = {},
): [string, string] {
    return [inlayRecipe(from), inlayRecipe(parts)];
}

export function step(of: Review, title: string) {
    const found = of.steps.find((each) => each.title === title);
    if (found === undefined) throw new Error(`No step ${title}: ${of.steps.map((each) => each.title).join(', ')}`);
    return found;
}
