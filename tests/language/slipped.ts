import { readdirSync, readFileSync } from 'node:fs';
import { textFindings } from '../../language/text-findings';
import type { Finding } from '../../shared/recipe/finding';
import { open, services } from './services';

const samples = new URL('../../samples/', import.meta.url);
export const read = (file: string) => readFileSync(new URL(file, samples), 'utf8').replaceAll(/^use .*$/gm, '');
export const workshop = read('workshop.kerf');
/** Every sample whose own text is without fault, each with the workshop below it. */
export const texts = readdirSync(samples)
    .filter((file) => file.endsWith('.kerf') && !/faulty|variants/.test(file))
    .map((file) => (file === 'workshop.kerf' ? workshop + read('heron-tray.kerf') : `${read(file)}\n${workshop}`));

/** What is said of a text that is worth a hand, hints left out. */
export async function worthMending(text: string): Promise<readonly Finding[]> {
    const findings = textFindings(await open(text, 'file:///shop/slip.kerf'), services);
    return findings.filter(({ severity }) => severity === 'error' || severity === 'warning');
}

/** One of so many characters slips; SLIP_STEP=1 tries every one. */
export const step = Number(process.env.SLIP_STEP ?? 97);
