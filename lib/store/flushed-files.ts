import fs from "node:fs";
import { PGlite, type PGliteOptions } from "@electric-sql/pglite";
import { NodeFS } from "@electric-sql/pglite/nodefs";

type Files = Awaited<ReturnType<NodeFS["init"]>>["emscriptenOpts"];
type Ready = NonNullable<Files["preRun"]>[number];
/** What is known of an open file or folder of the embedded database's file system: a file has its number with the operating system. */
type Stream = { readonly nfd?: number; readonly node: object };
type Operations = { fsync?: (stream: Stream) => number };
/** Hears of every file that was brought to the disk, by its place in the database's folder. */
type Heard = (path: string) => void;

/**
 * The files of the embedded database, brought to the disk when the database asks for it. The library's own file system takes that
 * question and does nothing; with it answered a commit that was acknowledged survives a power cut, as on a server.
 */
class FlushedFiles extends NodeFS {
  constructor(folder: string, private readonly heard: Heard) { super(folder); }
  override async init(pg: PGlite, options: Files): ReturnType<NodeFS["init"]> {
    const { emscriptenOpts } = await super.init(pg, options);
    return { emscriptenOpts: { ...emscriptenOpts, preRun: [...(emscriptenOpts.preRun ?? []), answering(this.rootDir, this.heard)] } };
  }
}

/** "Input or output error", as the embedded database numbers it (WASI, errno). */
const EIO = 29;
const isOperations = (value: unknown): value is Operations => typeof value === "object" && value !== null;
const answering = (folder: string, heard: Heard): Ready => (database) => {
  const files = database.FS.filesystems.NODEFS;
  const operations: unknown = "stream_ops" in files ? files.stream_ops : undefined;
  // Without the place to hook in nothing would be flushed, silently: then rather no database.
  if (!isOperations(operations)) throw new Error("the embedded database's files cannot be flushed with this version of it");
  operations.fsync = ({ nfd, node }) => {
    // A folder is asked about too; the operating system writes its entries with the file's own.
    if (nfd === undefined) return 0;
    // Told to the database as a fault of the disk: it then acknowledges nothing more.
    try { fs.fsyncSync(nfd); } catch { return EIO; }
    heard(database.FS.getPath(node).replace(/^\/pglite\/data\//, ""));
    return 0;
  };
};

/** `-F` is "never flush"; 16 MB of shared buffers instead of 128: a venue's whole database is smaller than that. */
const PARAMETERS = [...PGlite.defaultStartParams.filter((one) => one !== "-F"), "-c", "wal_sync_method=fsync", "-c", "shared_buffers=16MB"];

/** Opens the embedded database in a folder, or makes it there. */
export const openFlushed = (folder: string, options: Pick<PGliteOptions, "parsers"> = {}, heard: Heard = () => {}): Promise<PGlite> =>
  PGlite.create({ ...options, fs: new FlushedFiles(folder, heard), startParams: PARAMETERS });
