// Tells in a log what a process does to the files of one folder, so that a test can say what a disk would hold had the power
// gone at any moment. Preloaded; the folder is in LOST_WRITES_FOLDER, the log in LOST_WRITES_LOG. What the process writes
// to its standard output is in the log too, as from then on others believe it.
//
// A record: kind, length of the path, path, a number, length of the data, data. Numbers are 64 bits of this machine.
//   W path offset data   written          T path size          made so long
//   S path               forced to disk   D path               a folder's names forced to disk
//   C path               made             U path               deleted          O - - data   told
#include <cstdarg>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <dlfcn.h>
#include <fcntl.h>
#include <pthread.h>
#include <string>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

static pthread_mutex_t lock = PTHREAD_MUTEX_INITIALIZER;

static const std::string &folder() {
    static const std::string name = getenv("LOST_WRITES_FOLDER") ? getenv("LOST_WRITES_FOLDER") : "/nowhere";
    return name;
}

static int log_file() {
    static const int fd = static_cast<int>(
        syscall(SYS_openat, AT_FDCWD, getenv("LOST_WRITES_LOG"), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600));
    return fd;
}

static std::string path_of(int fd) {
    char link[64];
    char path[4096];
    snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
    ssize_t n = readlink(link, path, sizeof path);
    std::string name(path, n > 0 ? n : 0);
    return name.rfind(folder(), 0) == 0 ? name : "";
}

static void tell(char kind, const std::string &path, int64_t number, const void *data, int64_t length) {
    std::string record(1, kind);
    int64_t letters = static_cast<int64_t>(path.size());
    record.append(reinterpret_cast<const char *>(&letters), 8).append(path);
    record.append(reinterpret_cast<const char *>(&number), 8).append(reinterpret_cast<const char *>(&length), 8);
    record.append(static_cast<const char *>(data), length);
    if (syscall(SYS_write, log_file(), record.data(), record.size()) != static_cast<long>(record.size())) {
        abort();
    }
}

template <typename F> static F next(const char *name) { return reinterpret_cast<F>(dlsym(RTLD_NEXT, name)); }

struct Held {
    Held() { pthread_mutex_lock(&lock); }
    ~Held() { pthread_mutex_unlock(&lock); }
};

static ssize_t placed(int fd, const void *data, size_t length, int64_t offset) {
    std::string path = path_of(fd);
    if (path.empty()) {
        return syscall(SYS_pwrite64, fd, data, length, offset);
    }
    Held held;
    tell('W', path, offset, data, static_cast<int64_t>(length));
    return syscall(SYS_pwrite64, fd, data, length, offset);
}

static int opened(const char *path, int flags, mode_t mode) {
    Held held;
    bool fresh = (flags & O_CREAT) && access(path, F_OK) != 0;
    int fd = static_cast<int>(syscall(SYS_openat, AT_FDCWD, path, flags, mode));
    if (fd >= 0 && !path_of(fd).empty()) {
        if (fresh) {
            tell('C', path_of(fd), 0, "", 0);
        } else if ((flags & O_TRUNC) != 0) {
            tell('T', path_of(fd), 0, "", 0);
        }
    }
    return fd;
}

static int forced(int fd, long call) {
    int done = static_cast<int>(syscall(call, fd));
    std::string path = path_of(fd);
    if (!path.empty()) {
        struct stat what;
        fstat(fd, &what);
        Held held;
        tell(S_ISDIR(what.st_mode) ? 'D' : 'S', path, 0, "", 0);
    }
    return done;
}

extern "C" {
int open(const char *path, int flags, ...) {
    va_list more;
    va_start(more, flags);
    mode_t mode = va_arg(more, mode_t);
    va_end(more);
    return opened(path, flags, mode);
}
int open64(const char *path, int flags, ...) {
    va_list more;
    va_start(more, flags);
    mode_t mode = va_arg(more, mode_t);
    va_end(more);
    return opened(path, flags | O_LARGEFILE, mode);
}
ssize_t pwrite(int fd, const void *data, size_t length, off_t offset) { return placed(fd, data, length, offset); }
ssize_t pwrite64(int fd, const void *data, size_t length, off64_t offset) { return placed(fd, data, length, offset); }
ssize_t write(int fd, const void *data, size_t length) {
    if (fd == 1) {
        Held held;
        tell('O', "", 0, data, static_cast<int64_t>(length));
    } else {
        std::string path = path_of(fd);
        if (!path.empty()) {
            Held held;
            tell('W', path, lseek(fd, 0, SEEK_CUR), data, static_cast<int64_t>(length));
            return syscall(SYS_write, fd, data, length);
        }
    }
    return syscall(SYS_write, fd, data, length);
}
int ftruncate(int fd, off_t size) {
    std::string path = path_of(fd);
    if (!path.empty()) {
        Held held;
        tell('T', path, size, "", 0);
    }
    return static_cast<int>(syscall(SYS_ftruncate, fd, size));
}
int ftruncate64(int fd, off64_t size) { return ftruncate(fd, size); }
int fsync(int fd) { return forced(fd, SYS_fsync); }
int fdatasync(int fd) { return forced(fd, SYS_fdatasync); }
int unlink(const char *path) {
    if (std::string(path).rfind(folder(), 0) == 0) {
        Held held;
        tell('U', path, 0, "", 0);
    }
    return next<int (*)(const char *)>("unlink")(path);
}
}
