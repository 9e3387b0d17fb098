import type { JSONSchema } from 'vscode-json-languageservice';

/** What the recipes of the benchmark name. */
export const shopText = `laser shed { beam co2  power 45 W  spot 0.15 mm  field 600 x 400 mm  top speed 600 mm/s  acceleration 6000 mm/s2 }
board walnut-12 { wood black-walnut  thickness 12 mm +- 0.3 mm  moisture 8 % }
resin tide-blue { kind slow-epoxy  colour #1f6f8b }
`;

/** Recipes of the usual kind, as many as give that many lines or characters. */
export function recipeText(wanted: number, unit: 'lines' | 'characters'): string {
    const recipes: string[] = [];
    for (let size = 0; size < wanted; ) {
        const recipe = oneRecipe(recipes.length);
        recipes.push(recipe);
        size += unit === 'lines' ? recipe.split('\n').length - 1 : recipe.length;
    }
    return recipes.join('');
}

function oneRecipe(index: number): string {
    return `
recipe tray-${index} "Tray number ${index}" {
  revision 3
  make 4
  laser shed
  art heron "art/heron.svg" { width 140 mm }
  blank tray { of walnut-12  size 300 x 200 mm  grain along width }
  engrave pocket on tray {
    art heron at 150, 100 mm
    depth 0.5 mm
    passes 3
    outline 1
    scan across grain
    air off
  }
  seal tray with shellac { coats 2 }
  wait 2 h
  // The bottom third first, so that no air stays under it.
  fill pocket with tide-blue { overfill 15 % }
  wait 24 h "it hardens"
  sand tray {
    flush then 0.10 mm
    grits 120, 180, 240
  }
  finish tray with drying-oil { coats 2 }
}
`;
}

const figure = (description: string) => ({ type: 'number', description, minimum: 0, maximum: 30 });
const word = (description: string, ...choices: string[]) => ({ type: 'string', description, enum: choices });

/** A schema of the same kind of content for the peer. */
export const schema: JSONSchema = {
    type: 'array',
    items: {
        type: 'object',
        required: ['name', 'laser', 'steps'],
        additionalProperties: false,
        properties: {
            name: { type: 'string', description: 'Name of the recipe.' },
            title: { type: 'string', description: 'What it is called.' },
            laser: word('The laser it is burnt on.', 'shed', 'loft'),
            make: { type: 'integer', description: 'How many are made.', minimum: 1 },
            steps: {
                type: 'array',
                items: {
                    type: 'object',
                    required: ['do'],
                    additionalProperties: false,
                    properties: {
                        do: word('Kind of step.', 'engrave', 'cut', 'seal', 'fill', 'sand', 'finish'),
                        on: { type: 'string', description: 'The blank it is done on.' },
                        depth: figure('How deep.'),
                        passes: figure('How often the area is gone over.'),
                        outline: figure('Passes along the outline.'),
                        scan: word('Which way the scan lines run.', 'across', 'along'),
                        air: word('Air assist.', 'on', 'off'),
                        coats: figure('How many coats.'),
                    },
                },
            },
        },
    },
};

/** JSON that the schema fits, at least so many characters long. */
export function toJson(characters: number): string {
    const recipes: unknown[] = [];
    for (let size = 0; size < characters; size += 620) {
        recipes.push({
            name: `tray-${recipes.length}`,
            title: `Tray number ${recipes.length}`,
            laser: 'shed',
            make: 4,
            steps: [
                { do: 'seal', on: 'tray', coats: 2 },
                { do: 'fill', on: 'tray' },
                { do: 'engrave', on: 'tray', passes: 3, outline: 1, scan: 'across', air: 'off', depth: 0.5 },
            ],
        });
    }
    return JSON.stringify(recipes, undefined, 2);
}
