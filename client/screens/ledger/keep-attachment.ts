import type { Attachment } from '../../../server/http/contract.ts';
import type { Refusal } from '../../fields/faults.ts';
import { ApiError, sendFile } from '../../state/api.ts';
import { getState } from '../../state/store.ts';

/** Largest file kept, bytes: what the server takes. */
const LARGEST_BYTES = 8 * 1024 * 1024;
const BYTES_PER_MB = 1024 * 1024;

/** What the file picker offers; what a file is, the server finds out from its content. */
export const ATTACHMENT_ACCEPT = 'image/jpeg,image/png,image/webp,application/pdf';

/** Sends a picture or paper to be kept with the open project. */
export async function keepAttachment(
  file: File,
): Promise<
  { readonly kept: Attachment; readonly refusal: null } | { readonly kept: null; readonly refusal: Refusal }
> {
  if (file.size > LARGEST_BYTES)
    return {
      kept: null,
      refusal: {
        message: `“${file.name}” has ${Math.ceil(file.size / BYTES_PER_MB)} MB; up to 8 MB can be kept.`,
        wayOut: 'Take a smaller picture, or print it to a PDF file of lower quality.',
      },
    };
  try {
    const project = encodeURIComponent(getState().project?.id ?? '');
    const path = `/api/projects/${project}/attachments?name=${encodeURIComponent(file.name.slice(-200))}`;
    return { kept: await sendFile<Attachment>(path, file), refusal: null };
  } catch (error) {
    if (!(error instanceof ApiError)) throw error;
    return { kept: null, refusal: { message: error.message, wayOut: error.wayOut } };
  }
}

export function attachmentPath(id: string): string {
  return `/api/projects/${encodeURIComponent(getState().project?.id ?? '')}/attachments/${id}`;
}
