package spindlebook.device;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class DoorTest {
  @Test
  void only_a_caller_on_this_machine_is_a_watchdog_of_it() {
    for (String here : List.of("127.0.0.1", "127.8.0.1", "::1", "[::1]", "0:0:0:0:0:0:0:1")) {
      assertTrue(Door.here(here), here);
    }
    for (String there : List.of("192.168.1.20", "10.0.0.1", "128.0.0.1", "fe80::1", "::2")) {
      assertFalse(Door.here(there), there);
    }
  }
}
