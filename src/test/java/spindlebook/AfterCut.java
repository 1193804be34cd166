package spindlebook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;

/**
 * What a disk may hold after the power went: all that was forced, and of the rest any part in any
 * order. Of what was written some blocks of 512 B or 4 KB are there and some not, a length may have
 * grown without its content, and of names made, moved and dropped since their folder was forced
 * each is there or not, whatever became of the content.
 */
final class AfterCut {
  private final Random random;
  private final int block;

  /** Of what was not forced: 0 nothing, 1 all, 2 the half of it, 3 only the last. */
  private final int mode;

  private final Map<Integer, byte[]> forced = new TreeMap<>();
  private final Map<Integer, List<WatchedDisk.Op>> written = new TreeMap<>();
  private Map<String, Integer> names = new LinkedHashMap<>();
  private final List<WatchedDisk.Op> named = new ArrayList<>();
  private final List<byte[]> indexes = new ArrayList<>();

  private AfterCut(long seed) {
    random = new Random(seed);
    block = random.nextBoolean() ? 512 : 4096;
    mode = random.nextInt(5);
  }

  /** Puts into a folder what may be left after so many operations. */
  static void make(List<WatchedDisk.Op> done, long seed, Path folder, String index)
      throws IOException {
    AfterCut cut = new AfterCut(seed);
    done.forEach(cut::take);
    cut.put(folder, index);
  }

  private void take(WatchedDisk.Op op) {
    if (op instanceof WatchedDisk.Write write) {
      written.computeIfAbsent(write.file(), f -> new ArrayList<>()).add(op);
    } else if (op instanceof WatchedDisk.Cut cut) {
      written.computeIfAbsent(cut.file(), f -> new ArrayList<>()).add(op);
    } else if (op instanceof WatchedDisk.Force force) {
      List<WatchedDisk.Op> since = written.remove(force.file());
      byte[] content = forced.getOrDefault(force.file(), new byte[0]);
      forced.put(force.file(), since == null ? content : all(content, since));
    } else if (op instanceof WatchedDisk.ForceFolder folder) {
      forceFolder(folder.folder());
    } else if (op instanceof WatchedDisk.Index index) {
      indexes.add(index.bytes());
    } else if (!(op instanceof WatchedDisk.Told)) {
      named.add(op);
    }
  }

  private void forceFolder(String folder) {
    Set<String> wanted = new HashSet<>();
    List<WatchedDisk.Op> forcedNow = new ArrayList<>();
    for (int i = named.size() - 1; i >= 0; i--) {
      List<String> touched = touched(named.get(i));
      if (touched.stream().anyMatch(n -> WatchedDisk.parent(n).equals(folder))
          || touched.stream().anyMatch(wanted::contains)) {
        wanted.addAll(touched);
        forcedNow.add(0, named.remove(i));
      }
    }
    forcedNow.forEach(this::name);
  }

  private static List<String> touched(WatchedDisk.Op op) {
    if (op instanceof WatchedDisk.Make make) {
      return List.of(make.name());
    }
    if (op instanceof WatchedDisk.Drop drop) {
      return List.of(drop.name());
    }
    WatchedDisk.Move move = (WatchedDisk.Move) op;
    return List.of(move.from(), move.to());
  }

  private void name(WatchedDisk.Op op) {
    if (op instanceof WatchedDisk.Make make) {
      names.put(make.name(), make.file());
    } else if (op instanceof WatchedDisk.Drop drop) {
      names.remove(drop.name());
    } else if (op instanceof WatchedDisk.Move move) {
      names.remove(move.from());
      names.put(move.to(), move.file());
    }
  }

  private static byte[] all(byte[] content, List<WatchedDisk.Op> since) {
    byte[] now = content;
    for (WatchedDisk.Op op : since) {
      if (op instanceof WatchedDisk.Cut cut) {
        now = Arrays.copyOf(now, (int) Math.min(now.length, cut.length()));
      } else if (op instanceof WatchedDisk.Write write) {
        int end = (int) write.at() + write.bytes().length;
        now = Arrays.copyOf(now, Math.max(now.length, end));
        System.arraycopy(write.bytes(), 0, now, (int) write.at(), write.bytes().length);
      }
    }
    return now;
  }

  private boolean kept(boolean last) {
    return switch (mode) {
      case 0 -> false;
      case 1 -> true;
      case 3 -> last;
      default -> random.nextBoolean();
    };
  }

  /** The content of one file as it may be found. */
  private byte[] found(int file) {
    byte[] before = forced.getOrDefault(file, new byte[0]);
    List<WatchedDisk.Op> since = written.getOrDefault(file, List.of());
    int longest = Math.max(before.length, all(before, since).length);
    byte[] now = before;
    int reached = before.length;
    for (int i = 0; i < since.size(); i++) {
      boolean last = i == since.size() - 1;
      if (since.get(i) instanceof WatchedDisk.Cut cut) {
        if (kept(last) && cut.length() < now.length) {
          now = Arrays.copyOf(now, (int) cut.length());
          reached = now.length;
        }
      } else if (since.get(i) instanceof WatchedDisk.Write write) {
        int from = (int) write.at();
        int end = from + write.bytes().length;
        for (int at = from; at < end; ) {
          int next = Math.min(end, (at / block + 1) * block);
          if (kept(last && next == end)) {
            now = Arrays.copyOf(now, Math.max(now.length, next));
            System.arraycopy(write.bytes(), at - from, now, at, next - at);
            reached = Math.max(reached, next);
          }
          at = next;
        }
      }
    }
    // The length is written down apart from the content: it may be behind, or ahead of it.
    int least = Math.min(before.length, reached);
    int length =
        switch (random.nextInt(4)) {
          case 0 -> reached;
          case 1 -> longest;
          case 2 -> least;
          default -> least + random.nextInt(longest - least + 1);
        };
    return since.isEmpty() ? before : Arrays.copyOf(now, length);
  }

  private void put(Path folder, String index) throws IOException {
    for (int i = 0; i < named.size(); i++) {
      if (kept(i == named.size() - 1)) {
        name(named.get(i));
      }
    }
    for (Map.Entry<String, Integer> one : new TreeMap<>(names).entrySet()) {
      Path path = folder.resolve(one.getKey());
      if (Files.isDirectory(path.getParent())) {
        if (one.getValue() < 0) {
          Files.createDirectory(path);
        } else {
          Files.write(path, found(one.getValue()));
        }
      }
    }
    if (!indexes.isEmpty() && Files.isDirectory(folder.resolve(index).getParent())) {
      putIndex(folder.resolve(index));
    }
  }

  /** The database writes when it likes: nothing, an earlier state, the last one, or a torn one. */
  private void putIndex(Path file) throws IOException {
    byte[] last = indexes.get(indexes.size() - 1);
    byte[] other = indexes.get(random.nextInt(indexes.size()));
    switch (random.nextInt(4)) {
      case 0 -> {}
      case 1 -> Files.write(file, last);
      case 2 -> Files.write(file, other);
      default -> {
        ByteArrayOutputStream torn = new ByteArrayOutputStream();
        for (int at = 0; at < last.length; at += block) {
          byte[] from = random.nextBoolean() ? last : other;
          torn.writeBytes(
              Arrays.copyOfRange(
                  Arrays.copyOf(from, last.length), at, Math.min(last.length, at + block)));
        }
        Files.write(file, torn.toByteArray());
      }
    }
  }

  /** All of it, as it is when only the program was killed. */
  static void makeKilled(List<WatchedDisk.Op> done, Path folder) throws IOException {
    AfterCut whole = new AfterCut(0);
    done.forEach(whole::take);
    whole.named.forEach(whole::name);
    for (Map.Entry<String, Integer> one : new TreeMap<>(whole.names).entrySet()) {
      Path path = folder.resolve(one.getKey());
      int file = one.getValue();
      if (file < 0) {
        Files.createDirectory(path);
      } else {
        byte[] before = whole.forced.getOrDefault(file, new byte[0]);
        Files.write(path, all(before, whole.written.getOrDefault(file, List.of())));
      }
    }
  }
}
