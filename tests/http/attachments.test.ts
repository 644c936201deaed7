import { once } from 'node:events';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import request, { type Response } from 'supertest';
import { describe, expect, it, onTestFinished } from 'vitest';
import { attachmentFolder, attachmentPath, forgetAttachmentFiles } from '../../db/attachment-files.ts';
import { backUp } from '../../db/backup.ts';
import { LARGEST_ATTACHMENT } from '../../server/http/attachment-body.ts';
import { type OpenApp, openApp } from './open-app.ts';

/** The smallest picture there is: one grey pixel, as a PNG (chunks IHDR, IDAT and IEND of ISO/IEC 15948). */
const PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==',
  'base64',
);
/** The bytes by which ISO 32000 tells a PDF. */
const PAPER = Buffer.from('%PDF-1.4\n%âãÏÓ\n1 0 obj<<>>endobj\ntrailer<<>>\n%%EOF\n', 'latin1');

function put(app: OpenApp, name: string, content: Buffer | string, type = 'application/octet-stream') {
  return request(app.express)
    .put(`/api/projects/1/attachments?name=${encodeURIComponent(name)}`)
    .set('Content-Type', type)
    .send(content);
}

const bytesOf = (answer: Response): Buffer => answer.body as Buffer;

describe('an attachment', () => {
  it('is kept byte for byte, listed, and comes back shut off from everything else', async () => {
    const app = openApp();
    const kept = await put(app, 'receipt 17.png', PIXEL);
    expect(kept.status).toBe(201);
    expect(kept.body).toMatchObject({ name: 'receipt 17.png', type: 'image/png', bytes: PIXEL.length });
    const { id } = kept.body as { id: string };
    const list = await app.send('get', '/api/projects/1/attachments');
    expect(list.body).toEqual([kept.body]);
    const back = await request(app.express).get(`/api/projects/1/attachments/${id}`).responseType('blob');
    expect(bytesOf(back).equals(PIXEL)).toBe(true);
    expect(back.headers['content-type']).toBe('image/png');
    expect(back.headers['content-disposition']).toBe('inline; filename="receipt 17.png"');
    expect(back.headers['x-content-type-options']).toBe('nosniff');
    expect(back.headers['content-security-policy']).toContain('sandbox');
  });

  it('is one file however often it is sent, under its last name', async () => {
    const app = openApp();
    await put(app, 'a.png', PIXEL);
    await put(app, 'b.png', PIXEL, 'image/png');
    const list = await app.send('get', '/api/projects/1/attachments');
    expect((list.body as { name: string }[]).map(({ name }) => name)).toEqual(['b.png']);
    expect(readdirSync(attachmentFolder(app.db.name))).toHaveLength(1);
  });

  it('that is a paper is handed over, not shown', async () => {
    const app = openApp();
    const kept = await put(app, 'Beleg “Mai”.pdf', PAPER, 'image/png');
    expect(kept.body).toMatchObject({ name: 'Beleg “Mai”.pdf', type: 'application/pdf' });
    const back = await request(app.express).get(`/api/projects/1/attachments/${kept.body.id}`);
    expect(back.headers['content-disposition']).toMatch(/^attachment; /);
  });

  it.each([
    [
      'a page called a picture',
      'receipt.png',
      Buffer.from('<!doctype html><script>1</script>'),
      'something else',
    ],
    [
      'a drawing with scripts',
      'a.svg',
      Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'),
      'something else',
    ],
    ['a program', 'receipt.pdf', Buffer.from('MZ\x90\0\x03\0\0\0', 'latin1'), 'application/x-msdownload'],
    ['a moving picture', 'a.gif', Buffer.from('GIF89a\x01\0\x01\0', 'latin1'), 'image/gif'],
    ['nothing', 'a.png', Buffer.alloc(0), 'is empty'],
  ])(
    'is refused when it is %s, whatever it is called, and nothing is kept',
    async (_what, name, content, held) => {
      const app = openApp();
      const error = await app.refused(
        Promise.resolve(await put(app, name, content, 'image/png')),
        415,
        'type-not-allowed',
      );
      expect(error.message).toContain(held);
      expect(existsSync(attachmentFolder(app.db.name))).toBe(false);
      expect((await app.send('get', '/api/projects/1/attachments')).body).toEqual([]);
    },
  );

  it('of 50 MB is refused with its size, and one just small enough is kept', async () => {
    const app = openApp();
    const large = Buffer.alloc(50 * 1024 * 1024);
    PIXEL.copy(large);
    const error = await app.refused(Promise.resolve(await put(app, 'a.png', large)), 413, 'too-large');
    expect(error.message).toBe('The file has 50.0 MB; at most 8 MB can be kept.');
    const most = Buffer.alloc(LARGEST_ATTACHMENT);
    PIXEL.copy(most);
    expect((await put(app, 'a.png', most)).status).toBe(201);
  });

  it('has a name without folders, and must have one', async () => {
    const app = openApp();
    expect((await put(app, '../../etc/pa\u0000ss.png', PIXEL)).body.name).toBe('pass.png');
    await app.refused(Promise.resolve(await put(app, '', PIXEL)), 400, 'bad-request');
    await app.refused(
      app.send('get', '/api/projects/1/attachments/..%2f..%2fplywright.db'),
      404,
      'not-found',
    );
    await app.refused(app.send('get', `/api/projects/1/attachments/${'0'.repeat(64)}`), 404, 'not-found');
    await app.refused(app.send('get', '/api/projects/99/attachments'), 404, 'not-found');
  });

  it('gets the ending of what it holds, so that it is not opened as something else', async () => {
    const app = openApp();
    expect((await put(app, 'receipt.html', PIXEL)).body.name).toBe('receipt.html.png');
    expect((await put(app, 'scan', PAPER)).body.name).toBe('scan.pdf');
    const back = await app.send('get', '/api/projects/1/attachments');
    expect((back.body as { name: string }[]).map(({ name }) => name).toSorted()).toEqual([
      'receipt.html.png',
      'scan.pdf',
    ]);
  });

  it('sent in pieces without a length is refused where it becomes too large', async () => {
    const app = openApp();
    const server = app.express.listen(0, '127.0.0.1');
    await once(server, 'listening');
    onTestFinished(() => void server.close());
    const { port } = server.address() as AddressInfo;
    let pieces = 0;
    const body = new ReadableStream<Uint8Array>({
      pull(controller) {
        if (++pieces > 50) controller.close();
        else controller.enqueue(new Uint8Array(1024 * 1024));
      },
    });
    const init = { method: 'PUT', body, duplex: 'half' } as RequestInit;
    const answer = await fetch(`http://127.0.0.1:${port}/api/projects/1/attachments?name=a.png`, init);
    expect(answer.status).toBe(413);
    expect((await answer.json()).error.code).toBe('too-large');
    expect(existsSync(attachmentFolder(app.db.name))).toBe(false);
  });

  it('that a payment names and that is not here is a problem of the ledger, not a loss', async () => {
    const app = openApp();
    const { id } = (await put(app, 'a.png', PIXEL)).body as { id: string };
    const given = (attachmentId: string) => ({
      format: 'plywright-project',
      version: 1,
      settings: { name: 'Copy', units: 'metric', currency: 'EUR' },
      parts: [],
      payments: [{ id: '1', date: '2027-03-01', amountMinor: 100, attachmentId }],
    });
    const codes = async (attachmentId: string): Promise<readonly string[]> => {
      const project = await app.send('post', '/api/projects/import', given(attachmentId));
      const ledger = await app.send('get', `/api/projects/${project.body.id}/ledger`);
      return (ledger.body as { problems: { code: string }[] }).problems.map(({ code }) => code);
    };
    // A document names what it holds: where another project here has the file, it is there again.
    expect(await codes(id)).toEqual([]);
    expect(await codes('a'.repeat(64))).toEqual(['attachment-missing']);
    expect(await codes('no picture')).toEqual(['attachment-missing']);
  });

  it('whose file cannot be read is refused, and the program goes on', async () => {
    const app = openApp();
    const { id } = (await put(app, 'a.png', PIXEL)).body as { id: string };
    const path = attachmentPath(app.db.name, id);
    rmSync(path);
    await app.refused(app.send('get', `/api/projects/1/attachments/${id}`), 404, 'not-found');
    mkdirSync(path);
    await app.refused(app.send('get', `/api/projects/1/attachments/${id}`), 500, 'internal');
    expect((await app.send('get', '/api/projects/1/attachments')).status).toBe(200);
  });

  it('belongs to its project and to copies of it alone', async () => {
    const app = openApp();
    const { id } = (await put(app, 'a.png', PIXEL)).body as { id: string };
    await app.refused(app.send('get', `/api/projects/2/attachments/${id}`), 404, 'not-found');
    const copy = await app.send('post', '/api/projects/1/duplicate', { name: 'Copy' });
    const copied = await app.send('get', `/api/projects/${copy.body.id}/attachments`);
    expect((copied.body as { id: string }[]).map((one) => one.id)).toEqual([id]);
  });
});

describe('files beside the database', () => {
  it('stay as long as a backup names them, so that it can be put back whole', async () => {
    const app = openApp();
    const { id } = (await put(app, 'a.png', PIXEL)).body as { id: string };
    const folder = attachmentFolder(app.db.name);
    const backup = backUp(app.db, 'daily', new Date());
    app.db.exec('DELETE FROM attachment');
    forgetAttachmentFiles(app.db);
    expect(readdirSync(folder)).toEqual([id]);
    rmSync(backup);
    forgetAttachmentFiles(app.db);
    expect(readdirSync(folder)).toEqual([]);
  });

  it('stay when a backup cannot be asked', async () => {
    const app = openApp();
    const { id } = (await put(app, 'a.png', PIXEL)).body as { id: string };
    writeFileSync(backUp(app.db, 'daily', new Date()), 'damaged');
    app.db.exec('DELETE FROM attachment');
    forgetAttachmentFiles(app.db);
    expect(readdirSync(attachmentFolder(app.db.name))).toEqual([id]);
  });

  it('go when no project has them any more, and not before', async () => {
    const app = openApp();
    const { id } = (await put(app, 'a.png', PIXEL)).body as { id: string };
    const folder = attachmentFolder(app.db.name);
    mkdirSync(folder, { recursive: true });
    writeFileSync(`${folder}/${'1'.repeat(64)}`, 'left behind');
    forgetAttachmentFiles(app.db);
    expect(readdirSync(folder)).toEqual([id]);
    expect(readFileSync(`${folder}/${id}`).equals(PIXEL)).toBe(true);
  });
});
