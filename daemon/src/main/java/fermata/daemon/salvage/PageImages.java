package fermata.daemon.salvage;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** All images of pages in a database's file and in its log, in the order of the files. Not thread-safe. */
final class PageImages implements AutoCloseable {
    /** What SQLite makes by itself; fermata has never asked for another. */
    static final int PAGE_BYTES = 4096;

    private static final int LOG_HEADER_BYTES = 32;
    private static final int FRAME_HEADER_BYTES = 24;

    private final List<FileChannel> open = new ArrayList<>();
    private final List<Place> places = new ArrayList<>();
    /** By page number: where its images are, the newest last. */
    private final Map<Long, List<Place>> byNumber = new HashMap<>();

    private record Place(FileChannel file, long at) {}

    private PageImages() {}

    /** Of a database and its log; a file that is not there has none. */
    static PageImages of(Path database, Path log) throws IOException {
        PageImages images = new PageImages();
        boolean usable = false;
        try {
            if (Files.isRegularFile(database)) {
                images.addDatabase(images.open(database));
            }
            if (Files.isRegularFile(log)) {
                images.addLog(images.open(log));
            }
            usable = true;
            return images;
        } finally {
            if (!usable) {
                images.close();
            }
        }
    }

    private FileChannel open(Path file) throws IOException {
        FileChannel channel = FileChannel.open(file, StandardOpenOption.READ);
        open.add(channel);
        return channel;
    }

    private void addDatabase(FileChannel file) throws IOException {
        for (long at = 0; at < file.size(); at += PAGE_BYTES) {
            add(at / PAGE_BYTES + 1, new Place(file, at));
        }
    }

    /** Frames are taken whether SQLite would take them or not: its own checksums end at the first damage. */
    private void addLog(FileChannel file) throws IOException {
        ByteBuffer number = ByteBuffer.allocate(Integer.BYTES);
        for (long at = LOG_HEADER_BYTES; at < file.size(); at += FRAME_HEADER_BYTES + PAGE_BYTES) {
            number.clear();
            file.read(number, at);
            add(Integer.toUnsignedLong(number.getInt(0)), new Place(file, at + FRAME_HEADER_BYTES));
        }
    }

    private void add(long number, Place place) {
        places.add(place);
        byNumber.computeIfAbsent(number, key -> new ArrayList<>(1)).add(place);
    }

    int count() {
        return places.size();
    }

    /** One image; what lies beyond the end of its file is zero. */
    byte[] image(int index) throws IOException {
        return read(places.get(index));
    }

    /** All images of a page, the newest first. */
    List<byte[]> ofPage(long number) throws IOException {
        List<byte[]> images = new ArrayList<>();
        List<Place> found = byNumber.getOrDefault(number, List.of());
        for (int i = found.size() - 1; i >= 0; i--) {
            images.add(read(found.get(i)));
        }
        return images;
    }

    private static byte[] read(Place place) throws IOException {
        ByteBuffer page = ByteBuffer.allocate(PAGE_BYTES);
        while (page.hasRemaining() && place.file().read(page, place.at() + page.position()) > 0) {
            // Reads on.
        }
        return page.array();
    }

    @Override
    public void close() throws IOException {
        for (FileChannel channel : open) {
            channel.close();
        }
    }
}
