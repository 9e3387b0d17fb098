import { type Message, phrase } from '../../shared/recipe/phrase';
import { fillColours } from '../../shared/view/fill-colours';
import type { NewRecipeChoices, NewRecipeParams, Picked } from '../../shared/view/new-recipe';
import { NotDone } from './not-done';

/** The one of that name; without a name the only one of the shop's own, since what is built in has to be named. */
export function pickedOf(what: Message, name: string | undefined, all: readonly Picked[]): Picked {
    const own = all.filter(({ file }) => file !== undefined);
    if (name === undefined && own.length === 1) return own[0]!;
    const found = all.find((each) => each.name === name);
    if (found !== undefined) return found;
    const names = (own.length > 0 ? own : all).map((each) => each.name).join(', ');
    throw new NotDone(
        name === undefined ? phrase`Say which ${what}: ${names}.` : phrase`There is no ${what} ${name}; there is ${names}.`,
    );
}

/** A resin of the shop by its name, else a colour of which one is written. */
export function fillOf(name: string, { resins }: NewRecipeChoices): Pick<NewRecipeParams, 'resin' | 'colour'> {
    const resin = resins.find((each) => each.name === name);
    if (resin !== undefined) return { resin };
    const colour = Object.hasOwn(fillColours, name) ? fillColours[name as keyof typeof fillColours] : name;
    if (/^#[0-9a-f]{6}$/i.test(colour)) return { colour };
    const names = [...resins.map((each) => each.name), ...Object.keys(fillColours)].join(', ');
    throw new NotDone(phrase`There is no resin and no colour ${name}; there is ${names}, or a colour such as #1d5f7a.`);
}

/** The one that was meant: named, or the only one there is. */
export function namedOf(what: Message, name: string | undefined, all: readonly string[]): string {
    if (name !== undefined) return name;
    if (all.length === 1) return all[0]!;
    throw new NotDone(
        all.length === 0 ? phrase`There is no ${what} in this file.` : phrase`Say which ${what}: ${[...all].join(', ')}.`,
    );
}
