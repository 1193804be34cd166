package spindlebook;

import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.channels.WritableByteChannel;
import java.nio.file.AccessMode;
import java.nio.file.CopyOption;
import java.nio.file.DirectoryStream;
import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.nio.file.StandardOpenOption;
import java.nio.file.WatchEvent;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.FileAttributeView;
import java.nio.file.attribute.UserPrincipalLookupService;
import java.nio.file.spi.FileSystemProvider;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A folder as a file system of its own, laid over the real one, that writes down in order whatever
 * is done to it. Since every {@link Path} below it is one of its own, nothing that goes through
 * {@code java.nio.file} can write past it; only the index's database does, which is given a real
 * path.
 */
final class WatchedDisk extends FileSystem {
  /** What was done, in order. Names are paths from the root, {@code a/b}. */
  sealed interface Op {}

  record Write(int file, long at, byte[] bytes) implements Op {}

  record Cut(int file, long length) implements Op {}

  record Force(int file) implements Op {}

  /** A new name, of a new file or, for -1, of a folder. */
  record Make(String name, int file) implements Op {}

  record Move(String from, String to, int file) implements Op {}

  record Drop(String name) implements Op {}

  record ForceFolder(String folder) implements Op {}

  /** What somebody outside was told, and what has to hold from then on. */
  record Told(String what) implements Op {}

  /** The index's file as it was then. */
  record Index(byte[] bytes) implements Op {}

  private static final FileSystem REAL = FileSystems.getDefault();

  final Path realRoot;
  private final List<Op> ops = new ArrayList<>();
  private final Map<String, Integer> files = new HashMap<>();
  private int made;
  private final Provider provider = new Provider();

  WatchedDisk(Path realRoot) throws IOException {
    this.realRoot = realRoot.toRealPath();
  }

  Path root() {
    return new P(realRoot);
  }

  synchronized List<Op> ops() {
    return List.copyOf(ops);
  }

  synchronized void told(String what) {
    ops.add(new Told(what));
  }

  /** Notes how the index's file looks now. */
  synchronized void noteIndex(Path file) throws IOException {
    Path real = un(file);
    if (Files.exists(real)) {
      ops.add(new Index(Files.readAllBytes(real)));
    }
  }

  /** Takes in what is there already, and is on the disk for good. */
  synchronized void takeIn() throws IOException {
    try (var all = Files.walk(realRoot)) {
      for (Path real : all.filter(p -> !p.equals(realRoot)).toList()) {
        if (real.getFileName().toString().endsWith(".db")) {
          ops.add(new Index(Files.readAllBytes(real)));
        } else if (Files.isDirectory(real)) {
          ops.add(new Make(name(real), -1));
        } else {
          int file = made++;
          files.put(name(real), file);
          ops.add(new Make(name(real), file));
          ops.add(new Write(file, 0, Files.readAllBytes(real)));
          ops.add(new Force(file));
        }
        ops.add(new ForceFolder(parent(name(real))));
      }
    }
  }

  /**
   * Takes in what another disk did up to a cut, forced or not, when only the program was killed.
   */
  synchronized void takeIn(List<Op> before) {
    for (Op op : before) {
      ops.add(op);
      if (op instanceof Make make && make.file >= 0) {
        files.put(make.name, make.file);
        made = Math.max(made, make.file + 1);
      } else if (op instanceof Move move) {
        files.remove(move.from);
        files.put(move.to, move.file);
      } else if (op instanceof Drop drop) {
        files.remove(drop.name);
      }
    }
  }

  String name(Path any) {
    return realRoot.relativize(un(any).toAbsolutePath()).toString();
  }

  static String parent(String name) {
    return name.contains("/") ? name.substring(0, name.lastIndexOf('/')) : "";
  }

  private static Path un(Path path) {
    return path instanceof P p ? p.real : path;
  }

  private final class Provider extends FileSystemProvider {
    private final FileSystemProvider real = REAL.provider();

    @Override
    public String getScheme() {
      return "watched";
    }

    @Override
    public FileSystem newFileSystem(URI uri, Map<String, ?> env) {
      throw new UnsupportedOperationException();
    }

    @Override
    public FileSystem getFileSystem(URI uri) {
      return WatchedDisk.this;
    }

    @Override
    public Path getPath(URI uri) {
      throw new UnsupportedOperationException();
    }

    @Override
    public SeekableByteChannel newByteChannel(
        Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
        throws IOException {
      return newFileChannel(path, options, attributes);
    }

    @Override
    public FileChannel newFileChannel(
        Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
        throws IOException {
      synchronized (WatchedDisk.this) {
        String name = name(path);
        boolean there = Files.exists(un(path));
        FileChannel channel = FileChannel.open(un(path), options, attributes);
        if (Files.isDirectory(un(path))) {
          return new Channel(channel, name, -1);
        }
        if (!there) {
          files.put(name, made);
          ops.add(new Make(name, made++));
        } else if (options.contains(StandardOpenOption.TRUNCATE_EXISTING)) {
          ops.add(new Cut(files.get(name), 0));
        }
        return new Channel(channel, name, files.getOrDefault(name, -2));
      }
    }

    @Override
    public DirectoryStream<Path> newDirectoryStream(
        Path folder, DirectoryStream.Filter<? super Path> filter) throws IOException {
      List<Path> found = new ArrayList<>();
      try (DirectoryStream<Path> all = Files.newDirectoryStream(un(folder))) {
        for (Path real : all) {
          P path = new P(real);
          if (filter.accept(path)) {
            found.add(path);
          }
        }
      }
      return new DirectoryStream<>() {
        @Override
        public Iterator<Path> iterator() {
          return found.iterator();
        }

        @Override
        public void close() {}
      };
    }

    @Override
    public void createDirectory(Path folder, FileAttribute<?>... attributes) throws IOException {
      synchronized (WatchedDisk.this) {
        real.createDirectory(un(folder), attributes);
        ops.add(new Make(name(folder), -1));
      }
    }

    @Override
    public void delete(Path path) throws IOException {
      synchronized (WatchedDisk.this) {
        real.delete(un(path));
        files.remove(name(path));
        ops.add(new Drop(name(path)));
      }
    }

    @Override
    public void copy(Path from, Path to, CopyOption... options) throws IOException {
      Files.write(to, Files.readAllBytes(from), StandardOpenOption.CREATE_NEW);
    }

    @Override
    public void move(Path from, Path to, CopyOption... options) throws IOException {
      synchronized (WatchedDisk.this) {
        real.move(un(from), un(to), options);
        Integer file = files.remove(name(from));
        if (file != null) {
          files.put(name(to), file);
          ops.add(new Move(name(from), name(to), file));
        } else if (Files.isDirectory(un(to))) {
          throw new IOException("no folder is moved here");
        }
        // Else it is the index's own, which is not watched.
      }
    }

    @Override
    public boolean isSameFile(Path one, Path other) throws IOException {
      return real.isSameFile(un(one), un(other));
    }

    @Override
    public boolean isHidden(Path path) throws IOException {
      return real.isHidden(un(path));
    }

    @Override
    public FileStore getFileStore(Path path) throws IOException {
      return real.getFileStore(un(path));
    }

    @Override
    public void checkAccess(Path path, AccessMode... modes) throws IOException {
      real.checkAccess(un(path), modes);
    }

    @Override
    public <V extends FileAttributeView> V getFileAttributeView(
        Path path, Class<V> type, LinkOption... options) {
      return real.getFileAttributeView(un(path), type, options);
    }

    @Override
    public <A extends BasicFileAttributes> A readAttributes(
        Path path, Class<A> type, LinkOption... options) throws IOException {
      return real.readAttributes(un(path), type, options);
    }

    @Override
    public Map<String, Object> readAttributes(Path path, String names, LinkOption... options)
        throws IOException {
      return real.readAttributes(un(path), names, options);
    }

    @Override
    public void setAttribute(Path path, String name, Object value, LinkOption... options)
        throws IOException {
      real.setAttribute(un(path), name, value, options);
    }
  }

  /** A file, or a folder opened to be forced. */
  private final class Channel extends FileChannel {
    private final FileChannel real;
    private final String name;
    private final int file;

    Channel(FileChannel real, String name, int file) {
      this.real = real;
      this.name = name;
      this.file = file;
    }

    @Override
    public int write(ByteBuffer bytes) throws IOException {
      synchronized (WatchedDisk.this) {
        int written = write(bytes, real.position());
        real.position(real.position() + written);
        return written;
      }
    }

    @Override
    public int write(ByteBuffer bytes, long at) throws IOException {
      synchronized (WatchedDisk.this) {
        byte[] copy = new byte[bytes.remaining()];
        bytes.duplicate().get(copy);
        int written = real.write(bytes, at);
        if (written != copy.length) {
          throw new IOException("half a write");
        }
        ops.add(new Write(file, at, copy));
        return written;
      }
    }

    @Override
    public long write(ByteBuffer[] some, int from, int count) throws IOException {
      long all = 0;
      for (int i = from; i < from + count; i++) {
        all += write(some[i]);
      }
      return all;
    }

    @Override
    public FileChannel truncate(long length) throws IOException {
      synchronized (WatchedDisk.this) {
        real.truncate(length);
        ops.add(new Cut(file, length));
        return this;
      }
    }

    @Override
    public void force(boolean all) {
      synchronized (WatchedDisk.this) {
        ops.add(file < 0 ? new ForceFolder(name) : new Force(file));
      }
    }

    @Override
    public long transferTo(long at, long count, WritableByteChannel to) throws IOException {
      return real.transferTo(at, count, to);
    }

    @Override
    public long transferFrom(ReadableByteChannel from, long at, long count) {
      throw new UnsupportedOperationException();
    }

    @Override
    public int read(ByteBuffer into) throws IOException {
      return real.read(into);
    }

    @Override
    public int read(ByteBuffer into, long at) throws IOException {
      return real.read(into, at);
    }

    @Override
    public long read(ByteBuffer[] into, int from, int count) throws IOException {
      return real.read(into, from, count);
    }

    @Override
    public long position() throws IOException {
      return real.position();
    }

    @Override
    public FileChannel position(long at) throws IOException {
      real.position(at);
      return this;
    }

    @Override
    public long size() throws IOException {
      return real.size();
    }

    @Override
    public MappedByteBuffer map(MapMode mode, long at, long size) {
      throw new UnsupportedOperationException("what is mapped is written unseen");
    }

    @Override
    public FileLock lock(long at, long size, boolean shared) throws IOException {
      return real.lock(at, size, shared);
    }

    @Override
    public FileLock tryLock(long at, long size, boolean shared) throws IOException {
      return real.tryLock(at, size, shared);
    }

    @Override
    protected void implCloseChannel() throws IOException {
      real.close();
    }
  }

  private final class P implements Path {
    private final Path real;

    P(Path real) {
      this.real = real;
    }

    private P of(Path path) {
      return path == null ? null : new P(path);
    }

    @Override
    public FileSystem getFileSystem() {
      return WatchedDisk.this;
    }

    @Override
    public File toFile() {
      return real.toFile();
    }

    @Override
    public boolean isAbsolute() {
      return real.isAbsolute();
    }

    @Override
    public Path getRoot() {
      return of(real.getRoot());
    }

    @Override
    public Path getFileName() {
      return of(real.getFileName());
    }

    @Override
    public Path getParent() {
      return of(real.getParent());
    }

    @Override
    public int getNameCount() {
      return real.getNameCount();
    }

    @Override
    public Path getName(int index) {
      return of(real.getName(index));
    }

    @Override
    public Path subpath(int from, int to) {
      return of(real.subpath(from, to));
    }

    @Override
    public boolean startsWith(Path other) {
      return real.startsWith(un(other));
    }

    @Override
    public boolean endsWith(Path other) {
      return real.endsWith(un(other));
    }

    @Override
    public Path normalize() {
      return of(real.normalize());
    }

    @Override
    public Path resolve(Path other) {
      return of(real.resolve(un(other)));
    }

    @Override
    public Path relativize(Path other) {
      return of(real.relativize(un(other)));
    }

    @Override
    public URI toUri() {
      return real.toUri();
    }

    @Override
    public Path toAbsolutePath() {
      return of(real.toAbsolutePath());
    }

    @Override
    public Path toRealPath(LinkOption... options) throws IOException {
      return of(real.toRealPath(options));
    }

    @Override
    public WatchKey register(
        WatchService watcher, WatchEvent.Kind<?>[] events, WatchEvent.Modifier... modifiers) {
      throw new UnsupportedOperationException();
    }

    @Override
    public int compareTo(Path other) {
      return real.compareTo(un(other));
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof P p && real.equals(p.real);
    }

    @Override
    public int hashCode() {
      return real.hashCode();
    }

    @Override
    public String toString() {
      return real.toString();
    }
  }

  @Override
  public FileSystemProvider provider() {
    return provider;
  }

  @Override
  public void close() {}

  @Override
  public boolean isOpen() {
    return true;
  }

  @Override
  public boolean isReadOnly() {
    return false;
  }

  @Override
  public String getSeparator() {
    return REAL.getSeparator();
  }

  @Override
  public Iterable<Path> getRootDirectories() {
    return List.of(root());
  }

  @Override
  public Iterable<FileStore> getFileStores() {
    return REAL.getFileStores();
  }

  @Override
  public Set<String> supportedFileAttributeViews() {
    return REAL.supportedFileAttributeViews();
  }

  @Override
  public Path getPath(String first, String... more) {
    return new P(REAL.getPath(first, more));
  }

  @Override
  public PathMatcher getPathMatcher(String pattern) {
    PathMatcher matcher = REAL.getPathMatcher(pattern);
    return path -> matcher.matches(un(path));
  }

  @Override
  public UserPrincipalLookupService getUserPrincipalLookupService() {
    return REAL.getUserPrincipalLookupService();
  }

  @Override
  public WatchService newWatchService() {
    throw new UnsupportedOperationException();
  }
}
