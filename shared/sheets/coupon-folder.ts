import { fileName } from './escape';

/** Name of the folder, below `made`, for the files of a coupon. */
export function couponFolder(sheet: string, laser: string): string {
    return fileName(`coupon-${sheet}-${laser}`);
}
