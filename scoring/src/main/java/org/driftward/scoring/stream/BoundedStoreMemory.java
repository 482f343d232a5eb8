package org.driftward.scoring.stream;

import java.util.Map;
import org.apache.kafka.streams.state.RocksDBConfigSetter;
import org.jspecify.annotations.Nullable;
import org.rocksdb.BlockBasedTableConfig;
import org.rocksdb.Cache;
import org.rocksdb.LRUCache;
import org.rocksdb.Options;
import org.rocksdb.WriteBufferManager;

/**
 * One bound on the native memory of all state stores of the process. Without it every store of
 * every partition takes its own. Made by Kafka Streams, by class name; the shared parts live as
 * long as the process.
 */
public final class BoundedStoreMemory implements RocksDBConfigSetter {

  static final String MEBIBYTES = "driftward.store.memory.mib";

  private static final int DEFAULT_MEBIBYTES = 64;
  private static @Nullable Shared shared;

  /** Write buffers are counted within the cache, so that one number bounds both. */
  private record Shared(Cache cache, WriteBufferManager buffers) {}

  @Override
  public void setConfig(String storeName, Options options, Map<String, Object> configs) {
    var memory = shared(configs.get(MEBIBYTES));
    var table = (BlockBasedTableConfig) options.tableFormatConfig();
    table.setBlockCache(memory.cache());
    table.setCacheIndexAndFilterBlocks(true);
    table.setPinL0FilterAndIndexBlocksInCache(true);
    options.setTableFormatConfig(table);
    options.setWriteBufferManager(memory.buffers());
    options.setWriteBufferSize(4L << 20);
  }

  @Override
  public void close(String storeName, Options options) {
    // The shared parts stay for the other stores.
  }

  private static synchronized Shared shared(@Nullable Object mebibytes) {
    if (shared == null) {
      int wanted = mebibytes == null ? DEFAULT_MEBIBYTES : Integer.parseInt(mebibytes.toString());
      long bytes = (long) wanted << 20;
      var cache = new LRUCache(bytes);
      shared = new Shared(cache, new WriteBufferManager(bytes / 2, cache));
    }
    return shared;
  }
}
