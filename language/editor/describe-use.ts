import { AstUtils, type LangiumDocuments } from 'langium';
import { isFile, type Use } from '../generated/ast';
import { usedUri } from '../names/used-files';
import { constructOf } from '../vocabulary/constructs';

/** So many names are told; the rest are counted. */
const mostNamed = 16;

/** What a used file brings in. */
export function describeUse(use: Use, documents: LangiumDocuments): string | undefined {
    const uri = usedUri(use, AstUtils.getDocument(use).uri);
    const file = uri && documents.getDocument(uri)?.parseResult.value;
    if (uri === undefined) return undefined;
    if (!isFile(file)) return 'This file could not be read.';
    const named = file.entries.flatMap((entry) =>
        'name' in entry && entry.name ? [`${constructOf(entry.$type)?.word ?? ''} \`${entry.name}\``] : [],
    );
    if (named.length === 0) return 'There is no stock in this file.';
    const more = named.length > mostNamed ? ` and ${named.length - mostNamed} more` : '';
    return `Makes known here: ${named.slice(0, mostNamed).join(', ')}${more}.`;
}
