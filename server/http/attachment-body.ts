import express, { type RequestHandler } from 'express';
import { HttpRefusal } from './http-refusal.ts';

/** Largest picture or paper kept, bytes. A photograph of a telephone has 2 to 6 MB. */
export const LARGEST_ATTACHMENT = 8 * 1024 * 1024;
/** Where files are sent to; only there are bodies taken that are no JSON. */
export const ATTACHMENTS_PATH = '/api/projects/:id/attachments';

const readBytes = express.raw({ type: () => true, limit: LARGEST_ATTACHMENT });

/** Reads a file sent as it is. One that is too large is let through unread and refused with its size. */
export const attachmentBody: RequestHandler = (request, response, next) => {
  readBytes(request, response, (error?: unknown) => {
    if ((error as { readonly type?: unknown } | undefined)?.type !== 'entity.too.large') return next(error);
    const bytes = Number(request.headers['content-length']);
    const size = Number.isFinite(bytes)
      ? `has ${(bytes / 1024 / 1024).toFixed(1)} MB`
      : 'is larger than 8 MB';
    next(
      new HttpRefusal(
        'too-large',
        `The file ${size}; at most 8 MB can be kept.`,
        'Take the picture at a lower resolution, or keep the page with the total alone.',
      ),
    );
  });
};
