import { flag, shop } from '../kit/shop';
import { type TemporaryRepository, temporaryRepository } from '../kit/temporary-repository';

/** A small shop as files: stock, art, and a recipe that uses both. */
export const coaster = `use "stock/shop.kerf"
recipe coaster "Coaster" {
  revision 1 make 2 laser shed
  art flag "art/flag.svg"
  blank disc { of walnut-12 size 100 x 100 mm grain along width }
  engrave hollow on disc { art flag depth 0.5 mm air off }
  seal disc with shellac { coats 2 }
  wait 2 h
  fill hollow with tide-blue
  wait 24 h
  sand disc { flush then 0.1 mm grits 80, 120, 180 }
}
`;

export const otherRecipe = `use "stock/shop.kerf"
recipe plate "Plate" {
  laser shed
  blank plate { of ash-10 size 100 x 100 mm grain along width }
  sand plate { take 0.1 mm grits 80, 120 }
}
`;

export const shopFiles = {
    'coaster.kerf': coaster,
    'plate.kerf': otherRecipe,
    'stock/shop.kerf': shop,
    'art/flag.svg': flag,
};

export const bolder = flag.replace('</svg>', '<rect x="30" y="20" width="5" height="4"/></svg>');

/** The shop, or other files, as a repository with one commit, gone with the test. */
export function repository(files: Readonly<Record<string, string>> = shopFiles): TemporaryRepository {
    return temporaryRepository(files);
}
