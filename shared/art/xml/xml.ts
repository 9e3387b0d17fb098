import { SaxesParser } from 'saxes';
import { phrase } from '../../recipe/phrase';
import type { Problems } from '../problems';
import { declaredEntities } from './entities';
import { shortenValues } from './long-values';
import { type NormalForm, NormalFormWriter } from './normal-form';

/** What saxes complains of and reads past without losing its way. */
const mild =
    /^(undefined entity|duplicate attribute|disallowed character\.|an XML declaration must be|the XML declaration must|text data outside|encoding value)/;

/** Thrown by the handlers below to make saxes stop, and caught right here. */
class Stop extends Error {}

/**
 * Reads XML up to its first serious error; what came before it is kept. Entities are expanded,
 * elements of other namespaces left out. Answers undefined if there is no SVG in it at all.
 */
export function readXml(text: string, problems: Problems): NormalForm | undefined {
    const short = shortenValues(text);
    const writer = new NormalFormWriter(problems, short.restore);
    const parser = new SaxesParser<{ position: false }>({ position: false });
    let tagStart = 0;
    const fail = (message: string) => {
        const [reason] = message.split('\n');
        const offset = Math.min(short.original(parser.position), text.length);
        problems.add('unreadable', 'XML', phrase`This is not well-formed XML: ${reason!.replace(/\.$/, '')}.`, offset);
        if (!mild.test(reason!)) throw new Stop();
    };
    parser.on('error', (error) => fail(error.message.replace(/^\d+:\d+: /, '')));
    parser.on('doctype', (doctype) => {
        parser.ENTITIES = declaredEntities(doctype, problems, short.original(Math.max(0, parser.position - doctype.length)));
    });
    parser.on('processinginstruction', ({ target }) => {
        if (target === 'xml-stylesheet') {
            problems.add(
                'refused',
                target,
                phrase`A style sheet in another file is not opened.`,
                short.original(parser.position),
            );
        }
    });
    parser.on('opentagstart', () => {
        tagStart = short.text.lastIndexOf('<', parser.position - 1);
    });
    parser.on('opentag', ({ name, attributes }) => {
        writer.open(name, attributes as Record<string, string>, short.original(Math.max(0, tagStart)));
    });
    parser.on('closetag', () => writer.close());
    parser.on('text', (content) => writer.content(content));
    parser.on('cdata', (content) => writer.content(content));
    try {
        parser.write(short.text).close();
    } catch (error) {
        if (!(error instanceof Stop)) problems.add('unreadable', 'XML', phrase`This file could not be read as XML.`);
    }
    return writer.finish();
}
