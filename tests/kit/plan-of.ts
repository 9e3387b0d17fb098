import { createHash } from 'node:crypto';
import { readArt } from '../../server/engine/read-art';
import { makePlan } from '../../shared/plan/make-plan';
import { Memo } from '../../shared/plan/memo';
import type { Plan } from '../../shared/plan/plan';
import type { Recipe } from '../../shared/recipe/recipe';
import { memoryWorkshop } from './memory-workshop';
import { art as shopArt } from './shop';

/** Plans are plain data that nobody changes: many tests look at the same ones, of the samples above all. */
const made = new Map<string, Promise<Plan>>();
const mostMade = 32;

/** The plan of the first recipe in a text, with the shop's art and more of the test's own. */
export function planOf(text: string, more: Readonly<Record<string, string | Uint8Array>> = {}): Promise<Plan> {
    const hash = createHash('sha256').update(text);
    for (const [name, content] of Object.entries(more)) hash.update(`\0${name}\0${content.length}\0`).update(content);
    const key = hash.digest('hex');
    const known = made.get(key) ?? newPlanOf(text, more);
    made.delete(key);
    made.set(key, known);
    const [oldest] = made.keys();
    if (made.size > mostMade) made.delete(oldest!);
    return known;
}

async function newPlanOf(text: string, more: Readonly<Record<string, string | Uint8Array>>): Promise<Plan> {
    const art: Record<string, string | Uint8Array> = { ...shopArt, ...more };
    const recipe = await recipeOf(text);
    const states = recipe.arts.map((source) => {
        const content = art[source.path.value] ?? '';
        const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
        return [source.name, readArt(source, { uri: source.uri, version: '1', bytes })] as const;
    });
    return makePlan(recipe, new Map(states), new Memo());
}

const kit = memoryWorkshop();
let last: Promise<unknown> = kit;

/** One text after the other, each alone in the same workshop. */
function recipeOf(text: string): Promise<Recipe> {
    const read = async (): Promise<Recipe> => {
        const { workshop, open, forget } = await kit;
        try {
            return workshop.recipes(await open(text))[0]!;
        } finally {
            await forget();
        }
    };
    const recipe = last.then(read, read);
    last = recipe;
    return recipe;
}
