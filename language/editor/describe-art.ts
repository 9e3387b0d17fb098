import { AstUtils } from 'langium';
import type { ArtNames } from '../../shared/art/art-names';
import type { Art } from '../generated/ast';
import { resolvePath } from '../names/used-files';
import type { OutsideServices } from '../outside';
import { proposePicks } from './complete-picks';

/** So many parts are named; the rest are counted. */
const mostNamed = 12;

/** An art file and the parts of it that can be picked. */
export async function describeArt(art: Art, { artNames }: OutsideServices): Promise<string | undefined> {
    const uri = resolvePath(art.path, AstUtils.getDocument(art).uri);
    if (uri === undefined) return undefined;
    const names = await artNames(uri.toString());
    const file = `The art in \`${(art.path ?? '').replaceAll('`', "'")}\`.`;
    return names === undefined ? file : `${file}\n\n${partsOf(names)}`;
}

function partsOf(names: ArtNames): string {
    const picks = proposePicks(names).map(({ label }) => label);
    if (picks.length === 0) return 'None of its parts has a name to be picked by.';
    const more = picks.length > mostNamed ? ` and ${picks.length - mostNamed} more` : '';
    return `Parts that can be picked: ${picks
        .slice(0, mostNamed)
        .map((pick) => `\`${pick}\``)
        .join(', ')}${more}.`;
}
