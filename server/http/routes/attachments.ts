import { readFile } from 'node:fs/promises';
import { fileTypeFromBuffer } from 'file-type';
import { z } from 'zod';
import { attachmentPath, keepAttachmentFile } from '../../../db/attachment-files.ts';
import {
  ATTACHMENT_TYPES,
  type Attachment,
  readAttachment,
  readAttachments,
  saveAttachment,
} from '../../../db/attachments.repository.ts';
import { requireProject } from '../../../db/current-revision.ts';
import { HttpRefusal } from '../http-refusal.ts';
import { type Route, route } from '../route.ts';
import { projectParams } from '../schemas.ts';

/** Longest name of a file kept, characters. */
const LONGEST_NAME = 200;
/** What a browser may do with a file it shows from here: nothing. */
const SHOWN_ALONE = "sandbox; default-src 'none'; style-src 'unsafe-inline'";

const attachmentId = z.string().regex(/^[0-9a-f]{64}$/);
const attachmentSchema = z.strictObject({
  id: attachmentId,
  name: z.string(),
  type: z.enum(ATTACHMENT_TYPES),
  bytes: z.int().positive(),
  at: z.string(),
}) satisfies z.ZodType<Attachment>;

/** Pictures and papers of receipts. What a file is, its bytes say; its name and its declared type are not believed. */
export const attachmentRoutes: readonly Route[] = [
  route({
    method: 'put',
    path: '/api/projects/{id}/attachments',
    summary: 'Keep a picture (JPEG, PNG, WebP) or a PDF of up to 8 MB with a project; the body is the file.',
    group: 'exchange',
    params: projectParams,
    query: z.strictObject({ name: z.string().min(1).max(LONGEST_NAME) }),
    body: z.custom<Buffer>(Buffer.isBuffer, 'must be a file').meta({ type: 'string', format: 'binary' }),
    bodyType: 'application/octet-stream',
    status: 201,
    answer: attachmentSchema,
    refusals: ['type-not-allowed', 'too-large'],
    async handle({ params, query, body }, { db, now }) {
      const projectId = Number(params.id);
      requireProject(db, projectId);
      const type = await allowedType(body);
      const id = keepAttachmentFile(db.name, body);
      const attachment: Attachment = {
        id,
        name: plainName(query.name, type),
        type,
        bytes: body.length,
        at: now().toISOString(),
      };
      saveAttachment(db, projectId, attachment);
      return readAttachment(db, projectId, id);
    },
  }),
  route({
    method: 'get',
    path: '/api/projects/{id}/attachments',
    summary: 'The pictures and papers kept with a project, oldest first.',
    group: 'exchange',
    params: projectParams,
    answer: z.array(attachmentSchema),
    handle({ params }, { db }) {
      requireProject(db, Number(params.id));
      return readAttachments(db, Number(params.id));
    },
  }),
  route({
    method: 'get',
    path: '/api/projects/{id}/attachments/{attachmentId}',
    summary: 'One picture or paper, as it was sent.',
    group: 'exchange',
    params: projectParams.extend({ attachmentId }),
    answer: z.string(),
    answerType: 'application/octet-stream',
    async handle({ params }, { db }, response) {
      const attachment = readAttachment(db, Number(params.id), params.attachmentId);
      const content =
        attachment === undefined ? null : await contentOf(attachmentPath(db.name, params.attachmentId));
      if (attachment === undefined || content === null)
        throw new HttpRefusal(
          'not-found',
          'This picture or paper is not kept here.',
          'Attach it again; a project that came from another machine brings its rows, not its files.',
        );
      const { name, type } = attachment;
      // Papers are handed over rather than shown: what runs inside one must not run beside the program.
      response.attachment(name).type(type);
      if (type !== 'application/pdf')
        response.setHeader(
          'Content-Disposition',
          String(response.getHeader('Content-Disposition')).replace(/^attachment/, 'inline'),
        );
      response.setHeader('Content-Security-Policy', SHOWN_ALONE);
      response.send(content);
    },
  }),
];

/** What a file holds, 8 MB at most; null when it is not there. */
async function contentOf(path: string): Promise<Buffer | null> {
  try {
    return await readFile(path);
  } catch (error) {
    if ((error as { readonly code?: string }).code === 'ENOENT') return null;
    throw error;
  }
}

async function allowedType(content: Buffer): Promise<Attachment['type']> {
  const found = await fileTypeFromBuffer(content);
  const allowed = ATTACHMENT_TYPES.find((type) => type === found?.mime);
  if (allowed !== undefined) return allowed;
  const held =
    content.length === 0 ? 'is empty' : `holds ${found === undefined ? 'something else' : found.mime}`;
  throw new HttpRefusal(
    'type-not-allowed',
    `The file ${held}; JPEG, PNG and WebP pictures and PDF papers can be kept.`,
    'Take a picture of the receipt, or print it to a PDF file. The name of a file does not change what it is.',
  );
}

/** How files of each type are called; the first is given to one that is called otherwise. */
const ENDINGS: Readonly<Record<Attachment['type'], readonly [string, ...string[]]>> = {
  'image/jpeg': ['.jpg', '.jpeg', '.jpe', '.jfif'],
  'image/png': ['.png'],
  'image/webp': ['.webp'],
  'application/pdf': ['.pdf'],
};

/**
 * Without folders and control characters, and with the ending of what it holds: saved as `receipt.html`, a picture could
 * be opened as a page.
 */
function plainName(name: string, type: Attachment['type']): string {
  const plain = name
    .replace(/^.*[\\/]/, '')
    .replace(/\p{C}+/gu, '')
    .trim();
  const [ending, ...others] = ENDINGS[type];
  const fits = [ending, ...others].some((one) => plain.toLowerCase().endsWith(one));
  return `${plain === '' ? 'receipt' : plain}${fits ? '' : ending}`;
}
