import { fillColours } from '../../shared/view/fill-colours';
import type { NewRecipeChoices, NewRecipeParams, Picked } from '../../shared/view/new-recipe';

/** What was chosen by name, or the names to choose from, with commas between them. */
type Choice<Chosen> = { readonly chosen: Chosen } | { readonly names: string };

/** The one of that name; without a name the only one of the shop's own, since what is built in has to be named. */
export function pick(name: string | undefined, all: readonly Picked[]): Choice<Picked> {
    const own = all.filter(({ file }) => file !== undefined);
    const chosen = name === undefined ? (own.length === 1 ? own[0] : undefined) : all.find((each) => each.name === name);
    if (chosen !== undefined) return { chosen };
    return { names: (own.length > 0 ? own : all).map((each) => each.name).join(', ') };
}

/** A resin of the shop by its name, else a colour of which one is written. */
export function pickFill(name: string, { resins }: NewRecipeChoices): Choice<Pick<NewRecipeParams, 'resin' | 'colour'>> {
    const resin = resins.find((each) => each.name === name);
    if (resin !== undefined) return { chosen: { resin } };
    const colour = Object.hasOwn(fillColours, name) ? fillColours[name as keyof typeof fillColours] : name;
    if (/^#[0-9a-f]{6}$/i.test(colour)) return { chosen: { colour } };
    return { names: [...resins.map((each) => each.name), ...Object.keys(fillColours)].join(', ') };
}
