import type { NewRecipeParams } from '../../shared/view/new-recipe';
import { isBuiltIn } from '../built-in';
import * as ast from '../generated/ast';
import { resinOf } from '../lowering/fluids';
import { freeName } from './free-name';
import type { Shelf } from './picked-stock';
import { declared, fileOf } from './shop-here';
import type { Start } from './start';
import { pour } from './supplies';

/** A resin as it is declared, or with the text by which it is to be. */
export interface PickedResin {
    readonly node?: ast.Resin;
    readonly text?: string;
    readonly pour: Start['resin'];
}

/** The built-in resin of which a colour is made. */
const usual = 'table-top-epoxy';

/** What was chosen to fill with; undefined where nothing was, or where it is gone. */
export function pickedResin(
    { technique, resin, colour }: NewRecipeParams,
    { documents, names, services }: Shelf,
): PickedResin | undefined {
    if (technique !== 'filled') return undefined;
    const all = declared(documents, ast.isResin);
    const node = resin && all.find((each) => each.name === resin.name && fileOf(each) === resin.file);
    if (node !== undefined) return { node, pour: pour(resinOf(node)) };
    const base = all.find((each) => each.name === usual && isBuiltIn(fileOf(each)));
    if (colour === undefined || base === undefined) return undefined;
    const name = freeName('tinted-epoxy', names, 'resin', services);
    const text = `// Tint it with as much pigment as its maker allows, and write down which resin you bought.
resin ${name} {
  kind ${usual}
  colour ${colour}
}`;
    return { text, pour: { ...pour(resinOf(base)), name } };
}
